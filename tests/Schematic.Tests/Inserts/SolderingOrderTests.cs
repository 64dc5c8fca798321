using Schematic.Inserts;
using Xunit;

namespace Schematic.Tests.Inserts;

public class SolderingOrderTests
{
    [Fact]
    public void A_round_insert_is_soldered_from_the_centre_out()
    {
        // Common practice, no source: inner cups cannot be reached later.
        var insert = new SpiralInsert(19) { FromRim = true }.Build().Arrangement!;
        var order = SolderingOrder.Of(insert, FaceView.RearOfPins).Select(c => c.Name).ToList();
        Assert.Equal("19", order[0]);
        Assert.Equal(["13", "14", "15", "16", "17", "18"], order.Skip(1).Take(6).Order(StringComparer.Ordinal));
        Assert.Equal(19, order.Distinct().Count());
    }

    [Fact]
    public void Rows_are_soldered_bottom_row_up_from_left_to_right_as_the_hand_sees_them()
    {
        // NAVEDTRA 14009, cable fabrication: bottom connection first, left to right, one row up at a time. The solder side of the
        // pins is the mirror of their front: 9 stands at the left of the lower row there.
        var insert = new RowsInsert([5, 4]) { IsStaggered = true }.Build().Arrangement!;
        Assert.Equal(
            ["9", "8", "7", "6", "5", "4", "3", "2", "1"],
            SolderingOrder.Of(insert, FaceView.RearOfPins).Select(c => c.Name));
        Assert.Equal(
            ["6", "7", "8", "9", "1", "2", "3", "4", "5"],
            SolderingOrder.Of(insert, FaceView.RearOfSockets).Select(c => c.Name));
    }

    [Fact]
    public void Turning_the_connector_upside_down_turns_the_order()
    {
        var insert = new RowsInsert([5, 4]) { IsStaggered = true }.Build().Arrangement!;
        Assert.Equal("1", SolderingOrder.Of(insert, FaceView.RearOfPins, 180)[0].Name);
    }
}
