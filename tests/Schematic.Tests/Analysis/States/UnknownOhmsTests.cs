using System.Globalization;
using Schematic.Analysis.States;
using Schematic.Tests.Analysis.Loads;
using Xunit;

namespace Schematic.Tests.Analysis.States;

/// <summary>
/// Resistances that nobody has measured are looked at at both ends of what they may be, beside a diode at three places between too:
/// as many at once as make 256 corners.
/// </summary>
public sealed class UnknownOhmsTests
{
    [Theory]
    [InlineData(1, 2)]
    [InlineData(3, 8)]
    [InlineData(8, 256)]
    public void Up_to_eight_are_looked_at_in_every_corner(int count, int corners)
    {
        var circuit = Circuit(count, diode: false);
        var lamp = circuit.Circuit.ElementOf("DS1")!;
        Assert.True(circuit.IsToldApart(lamp));
        Assert.False(circuit.IsDecided(lamp));
        Assert.Equal(corners, Assert.Single(circuit.CasesOf(lamp)).Corners.Length);
    }

    [Fact]
    public void Nine_are_too_many() => Assert.False(IsToldApart(9, diode: false));

    [Theory]
    [InlineData(1, 5)]
    [InlineData(2, 25)]
    [InlineData(3, 125)]
    public void Beside_a_diode_up_to_three_are_looked_at_in_five_places_each(int count, int corners)
    {
        var circuit = Circuit(count, diode: true);
        Assert.Equal(corners, Assert.Single(circuit.CasesOf(circuit.Circuit.ElementOf("DS1")!)).Corners.Length);
    }

    [Fact]
    public void Beside_a_diode_four_are_too_many() => Assert.False(IsToldApart(4, diode: true));

    // 10 to 40 ohm beside a lamp of 100 ohm on 24 V: 21.8 to 17.1 V; in between the geometric mean, 20 ohm, 20 V.
    [Fact]
    public void A_range_is_looked_at_at_its_ends_and_told_at_its_geometric_mean()
    {
        var circuit = LoadPanels.Context("""
            supply PS1 24 V
            device U1 "line" { terminals 1 2 ; winding 1 2 10..40 ohm ; open rest }
            lamp DS1 24 V 240 mA
            net A PS1:+ U1:1
            net B U1:2 DS1:X1
            net C DS1:X2 PS1:-
            """).Positions.Circuit;
        var found = Assert.Single(circuit.CasesOf(circuit.Circuit.ElementOf("DS1")!));
        Assert.Equal(20, found.Volts!.Value, 0.01);
        Assert.Equal([21.82, 17.14], found.Corners.Select(c => Math.Round(c.Volts!.Value, 2)));
        Assert.Equal("U1 1-2", Assert.Single(found.Ranged).Name);
        Assert.True(found.Surely(c => c.Volts > 17));
        Assert.False(found.Surely(c => c.Volts > 18));
        Assert.True(found.Perhaps(c => c.Volts > 21));
        Assert.False(found.Perhaps(c => c.Volts > 22));
        Assert.True(found.HangsOnOhms(c => c.Volts > 18));
        Assert.False(found.HangsOnOhms(c => c.Volts > 17));
        Assert.False(found.HangsOnOhms(c => c.Volts > 22));
    }

    private static bool IsToldApart(int count, bool diode)
    {
        var circuit = Circuit(count, diode);
        return circuit.IsToldApart(circuit.Circuit.ElementOf("DS1")!);
    }

    private static ConditionalCircuit Circuit(int count, bool diode)
    {
        var text = string.Create(CultureInfo.InvariantCulture, $"supply PS1 24 V\nlamp DS1 24 V 40 mA\nnet M PS1:- DS1:X2\n")
            + string.Concat(Enumerable.Range(1, count).Select(i => $"resistor R{i}\nnet N{i}x {(i == 1 ? diode ? "D1:K" : "PS1:+" : $"R{i - 1}:2")} R{i}:1\n"))
            + $"net E R{count}:2 DS1:X1\n" + (diode ? "diode D1\nnet F PS1:+ D1:A\nlamp DS2 24 V 40 mA\nsupply PS2 12 V\nnet G PS2:+ DS2:X1\nnet H PS2:- DS2:X2\n" : "");
        return LoadPanels.Context(text).Positions.Circuit;
    }
}
