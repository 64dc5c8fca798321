using System.Globalization;
using Schematic.Inserts;
using Schematic.Layout.Frame;
using Schematic.Model;

namespace Schematic.Layout.Faces;

/// <summary>One connector at true size: front, rear, drilling template, and what was measured or computed.</summary>
internal static class TrueSizeCard
{
    private const double Gap = 8;

    /// <summary>The card in at most the given room; a part that is larger than the sheet is named and not drawn.</summary>
    public static Block Draw(Connector connector, double width, double height)
    {
        Block[] pieces =
        [
            TrueSizeView.Draw(connector, FaceWords.FrontOf(connector)),
            TrueSizeView.Draw(connector, FaceWords.RearOf(connector)),
            PanelTemplate.Draw(connector),
        ];
        var heading = FaceText.Lines(
            FaceText.NameOf(connector), FaceText.HeadingMm, width, bold: true, owner: connector.Designator);
        var row = Block.Row(Gap, pieces);
        var body = row.Width <= width ? row : Block.Stack(Gap, pieces);
        var words = Words(connector, Math.Max(80, body.Width));
        var card = Block.Stack(3, heading, body, words);
        if (card.Width <= width && card.Height <= height) return card;
        return Block.Stack(3, heading, FaceText.Lines(
            "Larger than this sheet at true size: choose a larger sheet for this view.", FaceText.MainMm, width), words);
    }

    /// <summary>The same piece by piece, for the sheet of the faces.</summary>
    public static IEnumerable<(string Title, Block Picture)> Pieces(Connector connector)
    {
        var template = PanelTemplate.Draw(connector);
        yield return ($"{connector.Designator} at true size", Block.Stack(
            3, Block.Around(ScaleBar.Compact()), TrueSizeView.Draw(connector, FaceWords.FrontOf(connector)), TrueSizeView.Draw(connector, FaceWords.RearOf(connector)),
            Words(connector, 60)));
        if (!template.Marks.IsEmpty) yield return ($"Panel of {connector.Designator} at true size", template);
    }

    private static Block Words(Connector connector, double width)
    {
        var insert = connector.Insert;
        var contacts = insert.Contacts;
        var lines = new List<string>
        {
            $"Filled: contact {contacts[0].Name}. Second ring: every tenth and the last, {contacts[^1].Name}.",
        };
        if (contacts.Length > 1)
            lines.Add($"Smallest distance of contact centres {Mark(connector)}{Text(FaceGeometry.LeastSpacingMm(contacts))} mm. {Extent(connector)}");
        lines.AddRange(FaceWords.Assumed(connector));
        if (connector.Cutout is null && connector.Flange is null)
            lines.Add("No panel hole stated: contact centres only; the outline is computed from them, the part's shell is larger.");
        lines.Add($"Numbering: {insert.Convention}.");
        return Block.Stack(0.9, lines.Select(l => FaceText.Lines(l, FaceText.QuietMm, width, owner: connector.Designator)));
    }

    private static string Extent(Connector connector)
    {
        var c = connector.Insert.Contacts;
        return connector.Insert.Outline == InsertOutline.Round
            ? $"Circle through the outermost centres Ø{Mark(connector)}{Text(2 * c.Max(p => Math.Sqrt((p.XMm * p.XMm) + (p.YMm * p.YMm))))} mm."
            : $"Centres span {Mark(connector)}{Text(c.Max(p => p.XMm) - c.Min(p => p.XMm))} x {Text(c.Max(p => p.YMm) - c.Min(p => p.YMm))} mm.";
    }

    /// <summary>Distances carry the mark of what is assumed where the program chose any of the arrangement's figures.</summary>
    private static string Mark(Connector connector) => connector.Insert.Assumed.IsEmpty ? "" : ValueText.AssumedMark;

    private static string Text(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);
}
