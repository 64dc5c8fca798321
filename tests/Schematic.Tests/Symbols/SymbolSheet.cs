using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Tests.Symbols;

/// <summary>All symbols of both styles side by side with their names: made for people to look at.</summary>
internal static class SymbolSheet
{
    private const double Column = 65;
    private const double Row = 22.5;
    private const int RowsPerColumn = 11;

    public static Sheet Build()
    {
        var marks = ImmutableArray.CreateBuilder<Mark>();
        var index = 0;
        foreach (var kind in Enum.GetValues<SymbolKind>())
        {
            var origin = new PointMm(15 + (index / RowsPerColumn * Column), 25 + (index % RowsPerColumn * Row));
            marks.Add(new TextMark(MarkRole.Label, kind.ToString(), origin.Moved(0, -8), 2.5));
            Add(marks, SymbolStyle.Iec, kind, origin.Moved(8, 2));
            Add(marks, SymbolStyle.Ieee, kind, origin.Moved(34, 2));
            index++;
        }

        return new Sheet(SheetKind.Schematic, 1, "Symbols", new SheetSize("A4", 210, 297), marks.ToImmutable());
    }

    private static void Add(ImmutableArray<Mark>.Builder marks, SymbolStyle style, SymbolKind kind, PointMm at)
    {
        var symbol = SymbolLibrary.For(style).Get(kind);
        marks.AddRange(symbol.PlacedAt(at, kind.ToString()));
        foreach (var port in symbol.Ports)
        {
            var end = at.Moved(port.At.X, port.At.Y);
            var (dx, dy) = port.Side switch { PortSide.Left => (-2.5, 0.0), PortSide.Right => (2.5, 0), PortSide.Top => (0, -2.5), _ => (0, 2.5) };
            marks.Add(LineMark.Between(MarkRole.Wire, end, end.Moved(dx, dy), Pen.Wide with { Ink = Ink.Quiet }));
        }
    }
}
