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
    private const int RowsPerColumn = 21;

    public static Sheet Build()
    {
        var marks = ImmutableArray.CreateBuilder<Mark>();
        for (var column = 0; column < 3; column++)
        {
            var x = 15 + (column * Column);
            marks.Add(new TextMark(MarkRole.Label, "IEC 60617 style", new PointMm(x + 30, 10), 2.5) { IsBold = true });
            marks.Add(new TextMark(MarkRole.Label, "IEEE 315 style", new PointMm(x + 60, 10), 2.5) { IsBold = true });
        }

        var (index, delayed, built) = (0, 0, 0);
        foreach (var kind in Enum.GetValues<SymbolKind>())
        {
            var origin = new PointMm(15 + (index / RowsPerColumn * Column), 22.5 + (index % RowsPerColumn * Row));
            var name = InnerCapital().Replace(kind.ToString(), m => " " + m.Value.ToLowerInvariant());
            marks.Add(new TextMark(MarkRole.Label, name, origin.Moved(0, 1.25), 2.5));
            Add(marks, SymbolLibrary.For(SymbolStyle.Iec).Get(kind), origin.Moved(35, 0));
            Add(marks, SymbolLibrary.For(SymbolStyle.Ieee).Get(kind), origin.Moved(65, 0));
            index++;
        }

        foreach (var contact in new[] { SymbolKind.MakeContact, SymbolKind.BreakContact, SymbolKind.ChangeoverContact })
        {
            foreach (var kind in new[] { SwitchKind.Reed, SwitchKind.Micro })
            {
                var origin = new PointMm(15 + (2 * Column), 22.5 + ((RowsPerColumn - 15 + built) * Row));
                marks.Add(new TextMark(MarkRole.Label, $"{contact.ToString().Replace("Contact", "", StringComparison.Ordinal)} {(kind == SwitchKind.Reed ? "reed" : "micro")}", origin.Moved(0, 1.25), 2.5));
                Add(marks, SymbolLibrary.For(SymbolStyle.Iec).OfKind(SymbolLibrary.For(SymbolStyle.Iec).Get(contact), kind), origin.Moved(35, 0));
                Add(marks, SymbolLibrary.For(SymbolStyle.Ieee).OfKind(SymbolLibrary.For(SymbolStyle.Ieee).Get(contact), kind), origin.Moved(65, 0));
                built++;
            }
        }

        foreach (var kind in new[] { SymbolKind.MakeContact, SymbolKind.BreakContact, SymbolKind.ChangeoverContact })
        {
            foreach (var (word, operating, releasing) in new[] { ("on-delay", true, false), ("off-delay", false, true), ("both delays", true, true) })
            {
                var origin = new PointMm(15 + (2 * Column), 22.5 + ((RowsPerColumn - 9 + delayed) * Row));
                marks.Add(new TextMark(MarkRole.Label, $"{kind.ToString().Replace("Contact", "", StringComparison.Ordinal)} {word}", origin.Moved(0, 1.25), 2.5));
                Add(marks, SymbolLibrary.For(SymbolStyle.Iec).Delayed(SymbolLibrary.For(SymbolStyle.Iec).Get(kind), operating, releasing), origin.Moved(35, 0));
                Add(marks, SymbolLibrary.For(SymbolStyle.Ieee).Delayed(SymbolLibrary.For(SymbolStyle.Ieee).Get(kind), operating, releasing), origin.Moved(65, 0));
                delayed++;
            }
        }

        return new Sheet(SheetKind.Wiring, 1, "Symbols", new SheetSize("A3", 297, 420), marks.ToImmutable());
    }

    private static void Add(ImmutableArray<Mark>.Builder marks, Symbol symbol, PointMm at)
    {
        foreach (var port in symbol.Ports)
        {
            var end = at.Moved(port.At.X, port.At.Y);
            var (dx, dy) = port.Side switch { PortSide.Left => (-2.5, 0.0), PortSide.Right => (2.5, 0), PortSide.Top => (0, -2.5), _ => (0, 2.5) };
            marks.Add(LineMark.Between(MarkRole.Wire, end, end.Moved(dx, dy), Pen.Wide with { Ink = Ink.Quiet }));
        }

        marks.AddRange(symbol.PlacedAt(at, symbol.Kind.ToString()));
    }

    [GeneratedRegex("(?<!^)[A-Z]")]
    private static partial Regex InnerCapital();
}
