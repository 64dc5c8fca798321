using Schematic.Analysis;
using Schematic.Inserts;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Tests.Reports;

/// <summary>A plug of seven soldered sockets, a strip, a lamp, a fuse and a supply: small enough to check lists by hand.</summary>
internal static class SmallHarness
{
    public static AnalysisContext Context(int sets = 2) => new(Panel(sets));

    public static Panel Panel(int sets = 2) => new()
    {
        Title = new TitleData { Title = "Crossing lamp harness", Number = "CL-1", Revision = "A" },
        BuildCount = sets,
        Parts =
        [
            Terminals(new Supply("PS1", 24, SourceSpan.None) { UnitPrice = new Price(22.10m, "EUR") }, "+", "-"),
            Terminals(new Fuse("F1", 1, SourceSpan.None) { UnitPrice = new Price(0.90m, "EUR"), SparePieces = 2 }, "1", "2"),
            Terminals(new Lamp("DS1", 24, 0.04, SourceSpan.None) { UnitPrice = new Price(2.05m, "EUR") }, "X1", "X2"),
            Terminals(new Lamp("DS2", 24, 0.04, SourceSpan.None) { UnitPrice = new Price(2.05m, "EUR") }, "X1", "X2"),
            Terminals(new TerminalStrip("X1", SourceSpan.None) { OnHand = true }, "1", "2", "3"),
            Plug(),
        ],
        Wires =
        [
            Wire("W1", "PS1:+", "F1:1", 20, 300, ColourCode.RD),
            Wire("W2", "F1:2", "P1:1", 22, 450, ColourCode.RD),
            Wire("W3", "X1:1", "P1:4", 22, 450, ColourCode.BK),
            Wire("W4", "P1:7", "DS1:X1", 22, 450, ColourCode.RD),
            Wire("W5", "P1:2", "P1:3", 22, 60, ColourCode.BK),
        ],
        Cables = [new Cable("C1", ["1", "2"], SourceSpan.None) { LengthMm = 1500, PricePerMetre = new Price(2.40m, "EUR") }],
        Alternatives = [new PartAlternative("P1", "the same plug, used", new Price(14.00m, "EUR"), SourceSpan.None)],
    };

    private static Connector Plug() => Terminals(
        new Connector("P1", new SpiralInsert(7) { Rings = [1, 6] }.Build().Arrangement!, SourceSpan.None)
        {
            Gender = Gender.Sockets,
            Termination = Termination.Solder,
            StripMm = 4.5,
            Description = "plug",
            OrderText = "circular plug, 7 sockets",
            UnitPrice = new Price(41.50m, "EUR"),
        },
        [.. Enumerable.Range(1, 7).Select(i => i.ToString(System.Globalization.CultureInfo.InvariantCulture))]);

    private static T Terminals<T>(T part, params string[] names)
        where T : Part => part with { Terminals = [.. names.Select(n => new Terminal(n, SourceSpan.None))] };

    private static Wire Wire(string name, string from, string to, int awg, double mm, ColourCode colour) =>
        new(name, Id(from), Id(to), SourceSpan.None)
        {
            Gauge = WireGauge.FromAwg(awg), LengthMm = mm, Colour = new WireColour(colour),
        };

    private static TerminalId Id(string text) => new(text[..text.IndexOf(':')], text[(text.IndexOf(':') + 1)..]);
}
