using System.Collections.Immutable;
using System.Globalization;
using Schematic.Inserts;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Tests.Layout.Faces;

/// <summary>Made-up panels with one connector of every kind and size.</summary>
internal static class FaceSamples
{
    public static SpiralInsert Spiral(int count) => new(count)
    {
        FromRim = false, Clockwise = true, Face = FaceView.FrontOfPins,
    };

    /// <summary>A panel whose connectors are wired contact by contact, the last quarter spare.</summary>
    public static Panel PanelOf(SheetSize size, params InsertBuilder[] inserts)
    {
        var parts = ImmutableArray.CreateBuilder<Part>();
        var wires = ImmutableArray.CreateBuilder<Wire>();
        for (var i = 0; i < inserts.Length; i++)
        {
            var connector = ConnectorOf($"P{i + 1}", inserts[i], i % 2 == 0 ? Gender.Sockets : Gender.Pins);
            parts.Add(connector);
            wires.AddRange(WiresOf(connector));
        }

        return new Panel { Sheet = size, Parts = parts.ToImmutable(), Wires = wires.ToImmutable() };
    }

    public static Connector ConnectorOf(string designator, InsertBuilder insert, Gender gender)
    {
        var arrangement = insert.Build().Arrangement!;
        var names = arrangement.Contacts.Select(c => c.Name).ToImmutableArray();
        return new Connector(designator, arrangement, SourceSpan.None)
        {
            Gender = gender,
            Description = "test fitting",
            ContactSize = "20",
            Termination = Termination.Solder,
            Terminals = [.. names.Select(n => new Terminal(n, SourceSpan.None))],
            Spares = names.Length < 4 ? [] : [.. names.TakeLast(names.Length / 4)],
        };
    }

    private static IEnumerable<Wire> WiresOf(Connector connector)
    {
        var colours = Enum.GetValues<ColourCode>();
        var names = connector.Insert.Contacts.Select(c => c.Name).Where(n => !connector.Spares.Contains(n)).ToList();
        for (var i = 0; i < names.Count; i++)
        {
            var number = (i + 1).ToString(CultureInfo.InvariantCulture);
            yield return new Wire($"{connector.Designator}-W{number}", connector.At(names[i]), new TerminalId("X1", number), SourceSpan.None)
            {
                Gauge = WireGauge.FromAwg(22),
                Colour = new WireColour(colours[i % 14], i % 4 == 3 ? colours[(i + 5) % 14] : null),
            };
        }
    }
}
