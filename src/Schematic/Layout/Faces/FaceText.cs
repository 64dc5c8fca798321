using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Model;

namespace Schematic.Layout.Faces;

/// <summary>Lettering of the face sheets and lines of text as blocks.</summary>
internal static class FaceText
{
    /// <summary>Connector names.</summary>
    public const double HeadingMm = 3.5;

    /// <summary>Everything else: it is read at arm's length.</summary>
    public const double MainMm = 2.5;

    /// <summary>Distance of base lines: 15/10 of the height (ISO 3098, type B).</summary>
    public static double PitchMm(double height) => height * 1.5;

    /// <summary>Text broken into lines of at most <paramref name="width"/>.</summary>
    public static Block Lines(string text, double height, double width, bool bold = false, Ink? ink = null, string? owner = null)
    {
        var lines = Lettering.Wrap(text, height, width, bold);
        var marks = lines.Select((line, i) => (Mark)new TextMark(
            MarkRole.Label, Lettering.Fit(line, height, width, bold), new PointMm(0, height + (i * PitchMm(height))), height)
        {
            IsBold = bold, Ink = ink ?? Ink.Black, Owner = owner,
        });
        return lines.Count == 0 ? Block.Empty : Block.Around(marks);
    }

    /// <summary>What a connector is, in a line: "P1 adapter plug".</summary>
    public static string NameOf(Connector connector) => connector.Description.Length == 0
        ? connector.Designator : $"{connector.Designator}  {connector.Description}";

    /// <summary>Its data in a line: "37 sockets, size 20, solder; mates J1".</summary>
    public static string DataOf(Connector connector)
    {
        var kind = connector.Gender switch { Gender.Pins => "pins", Gender.Sockets => "sockets", _ => "contacts" };
        var size = connector.ContactSize is { } s ? $", size {s}" : "";
        var fastened = connector.Termination == Termination.Unstated ? ""
            : ", " + connector.Termination.ToString().ToLowerInvariant();
        var mates = connector.Mates is { } m ? $"; mates {m}" : "";
        return $"{connector.Insert.Contacts.Length} {kind}{size}{fastened}{mates}";
    }
}
