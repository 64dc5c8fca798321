using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Model;

namespace Schematic.Layout.Faces;

/// <summary>Sets the true-size cards on sheets, side by side where they fit, each sheet with its bar to check the printer.</summary>
internal static class TrueSizeSheets
{
    private const double Gap = 10;

    public static IEnumerable<SheetContent> Build(ImmutableArray<Connector> connectors, BoxMm box)
    {
        var room = box with { Top = box.Top + ScaleBar.RoomMm };
        var (x, y, shelf) = (room.Left, room.Top, 0.0);
        var marks = new List<Mark>(ScaleBar.Marks(box));
        var names = new List<string>();
        foreach (var connector in connectors)
        {
            var card = TrueSizeCard.Draw(connector, room.Width, room.Height);
            if (x > room.Left && x + card.Width > room.Right) (x, y, shelf) = (room.Left, y + shelf + Gap, 0);
            if (names.Count > 0 && y + card.Height > room.Bottom)
            {
                yield return Sheet(names, marks);
                (marks, names) = ([.. ScaleBar.Marks(box)], []);
                (x, y, shelf) = (room.Left, room.Top, 0);
            }

            marks.AddRange(card.At(x, y).Marks);
            names.Add(connector.Designator);
            (x, shelf) = (x + card.Width + Gap, Math.Max(shelf, card.Height));
        }

        yield return Sheet(names, marks);
    }

    private static SheetContent Sheet(IEnumerable<string> names, IEnumerable<Mark> marks) =>
        new(SheetKind.TrueSize, $"True size of {string.Join(", ", names)}", [.. marks]);
}
