using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Reports;

namespace Schematic.Layout.Tables;

/// <summary>One row of a table, its cells broken into lines. A value: long tables have very many in every width that is tried.</summary>
internal readonly record struct TableRow(ImmutableArray<ImmutableArray<string>> Cells, TableColumns Columns, bool IsHeader)
{
    /// <summary>Height of letters in millimetres (ISO 3098 row): readable at arm's length.</summary>
    public const double Lettering = 2.5;

    /// <summary>Distance of lines in millimetres (ISO 3098: 15/10 of the lettering height).</summary>
    public const double LinePitch = 3.75;

    /// <summary>Room above and below the letters of a usual row, in millimetres.</summary>
    public const double UsualRoom = 1.75;

    /// <summary>Room above and below the letters of a row where closer rows save a sheet, in millimetres.</summary>
    public const double CloseRoom = 1.1;

    /// <summary>The same in a list that is only looked up, set like a book's index.</summary>
    public const double DenseRoom = 0.7;

    /// <summary>Whether it is a heading across all columns.</summary>
    public bool IsAcross { get; init; }

    /// <summary>Height in millimetres.</summary>
    public double Height => HeightOf(Cells.Max(c => c.Length), Columns.RoomAround);

    /// <summary>Height in millimetres of a row with that many lines.</summary>
    public static double HeightOf(int lines, double roomAround) => Lettering + ((lines - 1) * LinePitch) + (2 * roomAround);

    /// <summary>The row's letters with its upper left corner at the given place.</summary>
    public IEnumerable<Mark> Marks(double left, double top)
    {
        if (!IsAcross) return CellMarks(left, top);
        var first = new PointMm(left + TableColumns.Padding, top + Columns.RoomAround + Lettering);
        return Cells[0].Select((line, k) => new TextMark(MarkRole.Table, line, first with { Y = first.Y + (k * LinePitch) }, Lettering) { IsBold = true });
    }

    private IEnumerable<Mark> CellMarks(double left, double top)
    {
        var x = left;
        for (var i = 0; i < Cells.Length; i++)
        {
            var width = Columns.Widths[i];
            var align = Columns.Columns[i].Align;
            var anchor = align switch
            {
                ColumnAlign.Left => x + TableColumns.Padding,
                ColumnAlign.Right => x + width - TableColumns.Padding,
                _ => x + (width / 2),
            };
            for (var line = 0; line < Cells[i].Length; line++)
            {
                var text = Cells[i][line];
                if (text.Length == 0) continue;
                var at = new PointMm(anchor, top + Columns.RoomAround + Lettering + (line * LinePitch));
                var signs = IsHeader ? [] : CellSign.Of(text, align, anchor, at.Y - (Lettering / 2));
                foreach (var sign in signs) yield return sign;
                if (!signs.IsEmpty) continue;
                yield return LetterMark(text, Columns.Columns[i], at) with
                {
                    Align = (TextAlign)(align switch { ColumnAlign.Left => 0, ColumnAlign.Centre => 1, _ => 2 }),
                    IsBold = IsHeader,
                };
            }

            x += width;
        }
    }

    private TextMark LetterMark(string text, ReportColumn column, PointMm at) => column.IsPlace && !IsHeader
        ? TextMark.Referring(MarkRole.Table, Reference(text, column.PlacesOf), at, Lettering)
        : new TextMark(MarkRole.Table, text, at, Lettering);

    private static PlaceReference Reference(string name, PlacedNames kind) => kind == PlacedNames.Wires
        ? new PlaceReference(new Thing(ThingKind.Wire, name)) { On = SheetKind.Circuit }
        : new PlaceReference(Thing.Terminal(name)) { On = SheetKind.Wiring };
}
