using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Schematic.Drawing;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Tests.Symbols;

/// <summary>All symbols of both styles side by side with their names: made for people to look at.</summary>
internal static partial class SymbolSheet
{
    private const double Column = 95;
    private const double Row = 18.5;
    private const int RowsPerColumn = 15;

    public static Sheet Build()
    {
        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (var column = 0; column < 2; column++)
        {
            var x = 15 + (column * Column);
            marks.Add(new TextMark(MarkRole.Label, "IEC 60617 style", new PointMm(x + 30, 10), 2.5) { IsBold = true });
            marks.Add(new TextMark(MarkRole.Label, "IEEE 315 style", new PointMm(x + 60, 10), 2.5) { IsBold = true });
        }

        var index = 0;
        foreach (var kind in Enum.GetValues<SymbolKind>())
        {
            var origin = new PointMm(15 + (index / RowsPerColumn * Column), 22.5 + (index % RowsPerColumn * Row));
            var name = InnerCapital().Replace(kind.ToString(), m => " " + m.Value.ToLowerInvariant());
            marks.Add(new TextMark(MarkRole.Label, name, origin.Moved(0, 1.25), 2.5));
            Add(marks, SymbolStyle.Iec, kind, origin.Moved(35, 0));
            Add(marks, SymbolStyle.Ieee, kind, origin.Moved(65, 0));
            index++;
        }

        return new Sheet(SheetKind.Wiring, 1, "Symbols", new SheetSize("A4", 210, 297), marks.ToImmutable());
    }

    private static void Add(ImmutableArray<Mark>.Builder marks, SymbolStyle style, SymbolKind kind, PointMm at)
    {
        var symbol = SymbolLibrary.For(style).Get(kind);
        foreach (var port in symbol.Ports)
        {
            var end = at.Moved(port.At.X, port.At.Y);
            var (dx, dy) = port.Side switch { PortSide.Left => (-2.5, 0.0), PortSide.Right => (2.5, 0), PortSide.Top => (0, -2.5), _ => (0, 2.5) };
            marks.Add(LineMark.Between(MarkRole.Wire, end, end.Moved(dx, dy), Pen.Wide with { Ink = Ink.Quiet }));
        }

        marks.AddRange(symbol.PlacedAt(at, kind.ToString()));
    }

    [GeneratedRegex("(?<!^)[A-Z]")]
    private static partial Regex InnerCapital();
}
