using Schematic.Layout.Frame;
using Schematic.Model;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Layout.Frame;

public class CautionsTests
{
    private static readonly SourceSpan None = SourceSpan.None;

    [Fact]
    public void Every_panel_is_marked_as_not_for_service_and_defers_to_codes_and_licensed_practice()
    {
        var first = Cautions.For(new Panel())[0];
        Assert.Contains("Not for use in service", first, StringComparison.Ordinal);
        Assert.Contains("local codes and licensed practice", first, StringComparison.Ordinal);
    }

    [Fact]
    public void Coils_ask_for_suppression_and_are_named()
    {
        var panel = new Panel
        {
            Parts =
            [
                new Relay("K10", new CoilData(24, 800), [], None), new Relay("K2", new CoilData(24, 800), [], None),
                new Solenoid("L1", new CoilData(28, 40), None), new Relay("K1", new CoilData(24, 800), [], None),
            ],
        };
        Assert.Contains(Cautions.For(panel), c => c.Contains("K1, K2, K10 and 1 more", StringComparison.Ordinal) && c.Contains("diode", StringComparison.Ordinal));
        Assert.DoesNotContain(Cautions.For(new Panel()), c => c.Contains("diode", StringComparison.Ordinal));
    }

    // 60 V direct and 25 V alternating: IEC 60364-4-41, extra-low voltage without basic protection (from memory).
    [Theory]
    [InlineData(60, 60, false, false)]
    [InlineData(24, 61, false, true)]
    [InlineData(25, 25, true, false)]
    [InlineData(26, 26, true, true)]
    public void A_supply_above_the_touch_limit_is_warned_of_at_its_highest_setting(double volts, double most, bool isAlternating, bool isWarned)
    {
        var panel = new Panel { Parts = [new Supply("PS1", volts, None) { MaxVolts = most, IsAlternating = isAlternating }] };
        Assert.Equal(isWarned, Cautions.For(panel).Any(c => c.StartsWith("PS1 gives a voltage that can kill", StringComparison.Ordinal)));
    }

    [Fact]
    public void Salvaged_equipment_warns_of_old_materials()
    {
        var salvaged = new Panel { Attachments = [new Attachment(new("S1", "1"), new("J1", "4"), None)] };
        Assert.Contains(Cautions.For(salvaged), c => c.Contains("cadmium", StringComparison.Ordinal));
        Assert.DoesNotContain(Cautions.For(new Panel()), c => c.Contains("cadmium", StringComparison.Ordinal));
    }

    [Fact]
    public void The_users_own_cautions_stand_last() =>
        Assert.Equal("Mind the flywheel.", Cautions.For(new Panel { Cautions = ["Mind the flywheel."] })[^1]);
}
