using Schematic.Analysis;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Reports;

public class ConditionWordsTests
{
    private const string Two = """
        actuator KEY   { out rest ; in }
        actuator LEVER { normal rest ; check ; reverse ; free }
        actuator PUSH  { released rest ; pressed springs-to released }
        switch S1 make on KEY when in
        switch S2 make on LEVER when check, reverse
        switch S3 make on PUSH when pressed
        board A1 { inputs IN1..IN3 max 5.5 V pull-up 5 V 10 kohm ; ground GND }
        net ONE  A1:IN1 S1:1
        net MID  S1:2 S2:1
        net GND  S2:2 A1:GND S3:2
        net TWO  A1:IN2 S3:1
        net ALL  A1:IN3 A1:GND
        """;

    [Fact]
    public void Positions_in_which_the_rest_is_alike_are_drawn_together_and_what_does_not_matter_is_not_named()
    {
        var rows = SignalList.Build(new AnalysisContext(TestPanels.Load(Two))).Rows;
        Assert.Equal("KEY in + LEVER check, reverse", rows[0][5]);
        Assert.Equal("KEY out; KEY in + LEVER normal, free", rows[0][6]);
        Assert.Equal("PUSH pressed (hold)", rows[1][5]);
        Assert.Equal("always", rows[2][5]);
        Assert.Equal("", rows[2][6]);
    }

    [Fact]
    public void A_printed_list_calls_the_longest_the_other_cases()
    {
        var rows = SignalList.BuildPrinted(new AnalysisContext(TestPanels.Load(Two))).Rows;
        Assert.Equal("KEY in + LEVER check, reverse", rows[0][5]);
        Assert.Equal("otherwise", rows[0][6]);
        Assert.Equal(["PUSH pressed (hold)", "PUSH released"], rows[1].Skip(5).Take(2));
    }
}
