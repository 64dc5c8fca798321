using System.Globalization;
using Schematic.Analysis.Circuits;
using Schematic.Model;
using Schematic.Tests.Analysis.Loads;
using Xunit;

namespace Schematic.Tests.Analysis.Circuits;

/// <summary>Resistances inside a device out of what a meter reads between its terminals, against star and triangle by hand.</summary>
public sealed class InsideDeviceTests
{
    // A star of 10, 20 and 30 ohm reads 30, 50 and 40; as a triangle (Kennelly) it is 110/3, 55 and 110 ohm.
    [Fact]
    public void Three_readings_of_a_star_are_the_triangle_of_the_same_name() => Assert.Equal(
        ["1-2 36.6667", "2-3 110", "1-3 55"], Inside("ohms 1 2 30 ohm ; ohms 2 3 50 ohm ; ohms 1 3 40 ohm"));

    // 10 and 20 ohm in a row: between the outer terminals there is nothing but the two.
    [Fact]
    public void Two_resistances_in_a_row_leave_none_between_their_outer_ends() => Assert.Equal(
        ["1-2 10", "2-3 20"], Inside("ohms 1 2 10 ohm ; ohms 2 3 20 ohm ; ohms 1 3 30 ohm"));

    [Theory]
    [InlineData("30.001 ohm", true)]
    [InlineData("30 ohm", false)]
    [InlineData("29.9 ohm", false)]
    public void No_reading_is_more_than_the_other_two_together(string ohms, bool isImpossible)
    {
        var device = Device($"ohms 1 2 10 ohm ; ohms 2 3 20 ohm ; ohms 1 3 {ohms}");
        Assert.Equal(isImpossible, DeviceNetwork.IsImpossible(device));
        if (isImpossible) Assert.Equal(["1-2 10", "2-3 20", "1-3 30.001"], Words(device));
    }

    [Theory]
    [InlineData("ohms 1 2 30 ohm ; ohms 2 3 50 ohm", "1-2 30, 2-3 50")]
    [InlineData("ohms 1 2 30 ohm ; ohms 2 3 50 ohm ; ohms 1 3", "1-2 30, 2-3 50, 1-3 ?")]
    [InlineData("ohms 1 2 30 ohm ; ohms 2 3 50 ohm ; ohms 1 3 40..45 ohm", "1-2 30, 2-3 50, 1-3 40..45")]
    [InlineData("ohms 1 2 30 ohm ; ohms 2 3 50 ohm ; ohms 3 4 20 ohm ; ohms 4 1 60 ohm", "1-2 30, 2-3 50, 3-4 20, 4-1 60")]
    public void Readings_that_are_not_all_known_stand_for_themselves(string lines, string expected)
    {
        Assert.Equal(expected, string.Join(", ", Inside(lines)));
        Assert.False(DeviceNetwork.IsImpossible(Device(lines)));
    }

    // Six equal resistances of 40 ohm between four terminals: each reading is half of one.
    [Fact]
    public void Four_terminals_are_worked_out_likewise() => Assert.Equal(
        ["1-2 40", "1-3 40", "1-4 40", "2-3 40", "2-4 40", "3-4 40"],
        Inside("ohms 1 2 20 ohm ; ohms 1 3 20 ohm ; ohms 1 4 20 ohm ; ohms 2 3 20 ohm ; ohms 2 4 20 ohm ; ohms 3 4 20 ohm"));

    [Fact]
    public void Groups_that_nothing_joins_are_worked_out_apart() => Assert.Equal(
        ["1-2 45", "2-3 45", "1-3 45", "4-5 100"],
        Inside("ohms 1 2 30 ohm ; ohms 2 3 30 ohm ; ohms 1 3 30 ohm ; ohms 4 5 100 ohm"));

    [Fact]
    public void A_diode_drops_what_was_read_across_it_and_else_what_silicon_drops()
    {
        var circuit = new Circuit(LoadPanels.Context("device U1 \"box\" { terminals 1 2 3 ; diode 1 2 0.3 V ; diode 2 3 ; open rest }"));
        Assert.Equal([0.3, 0.7], circuit.Elements.Select(e => e.Volts));
    }

    private static string[] Inside(string lines) => Words(Device(lines));

    private static string[] Words(Device device) => [.. DeviceNetwork.Of(device).Select(r => $"{r.Ends.From}-{r.Ends.To} " + (r.Ohms is { } ohms ? Figure(ohms)
        : r is { Least: { } least, Most: { } most } ? $"{Figure(least)}..{Figure(most)}" : "?"))];

    private static string Figure(double ohms) => ohms.ToString("G6", CultureInfo.InvariantCulture);

    private static Device Device(string lines) => LoadPanels.Context($"device U1 \"box\" {{ terminals 1 2 3 4 5 ; {lines} ; open rest }}").Panel.Parts.OfType<Device>().Single();
}
