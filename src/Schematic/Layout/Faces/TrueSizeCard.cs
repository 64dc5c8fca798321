using System.Globalization;
using Schematic.Drawing;
using Schematic.Inserts;
using Schematic.Layout.Frame;
using Schematic.Model;

namespace Schematic.Layout.Faces;

/// <summary>One connector at true size: front, rear, drilling template, and what was measured or computed.</summary>
internal static class TrueSizeCard
{
    private const double Gap = 8;
    private const double LongCaptionMm = 48;
    private const double BroadCaptionMm = 30;
    private const double HeadMm = 12;
    private const string TooLarge = "Larger than this sheet at true size: choose a larger sheet for this view.";

    /// <summary>The card in at most the given room; a part that is larger than the sheet is named and not drawn.</summary>
    public static Block Draw(Connector connector, double width, double height)
    {
        // Captions may differ in lines: the faces stand at one height.
        Block[] views = [TrueSizeView.Draw(connector, FaceWords.FrontOf(connector)), TrueSizeView.Draw(connector, FaceWords.RearOf(connector))];
        var template = PanelTemplate.Draw(connector);
        var heading = FaceText.Lines(
            FaceText.NameOf(connector), FaceText.HeadingMm, width, bold: true, owner: connector.Designator);
        var row = Block.Row(Gap, Block.Level(Gap, views), template);
        var body = row.Width <= width ? row : Block.Stack(Gap, [.. views, template]);
        var words = Words(connector, Math.Max(80, body.Width));
        var card = Block.Stack(3, heading, body, words);
        if (card.Width <= width && card.Height <= height) return card;
        return Block.Stack(3, heading, FaceText.Lines(TooLarge, FaceText.MainMm, width), words);
    }

    /// <summary>The same piece by piece, for the sheet of the faces and for sheets that have room; a piece that is larger than the box is named and not drawn.</summary>
    /// <param name="connector">The connector.</param>
    /// <param name="isBroad">Whether front and rear stand side by side.</param>
    /// <param name="box">What a sheet may use.</param>
    /// <param name="mate">Its other half, where that needs no view of its own.</param>
    public static IEnumerable<(string Title, Block Picture)> Pieces(Connector connector, bool isBroad, BoxMm box, Connector? mate = null)
    {
        var caption = isBroad ? BroadCaptionMm : LongCaptionMm;
        Block[] views = [TrueSizeView.Draw(connector, FaceWords.FrontOf(connector), caption), TrueSizeView.Draw(connector, FaceWords.RearOf(connector), caption)];
        var both = isBroad && Block.Row(3, views).Width <= box.Width ? Block.Level(3, views) : Block.Stack(3, views);
        // What the notes of the sheet say already is not said again.
        IEnumerable<string> mates = mate is null ? [] : [$"{mate.Designator}: the same, front and rear exchanged."];
        var words = Block.Stack(0.9, mates.Concat(Measures(connector)).Select(l => FaceText.Lines(l, FaceText.MainMm, Math.Max(60, both.Width), owner: connector.Designator)));
        yield return ($"True size of {(mate is null ? connector.Designator : $"{connector.Designator}, {mate.Designator}")}", Fitting(Block.Stack(3, Block.Around(ScaleBar.Compact()), both, words), box));
        foreach (var panel in Panel(connector, box)) yield return panel;
    }

    /// <summary>The drilling template, where a hole or a flange is stated.</summary>
    public static IEnumerable<(string Title, Block Picture)> Panel(Connector connector, BoxMm box)
    {
        var template = PanelTemplate.Draw(connector);
        if (!template.Marks.IsEmpty) yield return ($"Panel of {connector.Designator} at true size", Fitting(Block.Stack(3, Block.Around(ScaleBar.Compact()), template), box));
    }

    private static Block Fitting(Block piece, BoxMm box) => piece.Width <= box.Width && piece.Height + HeadMm <= box.Height
        ? piece : FaceText.Lines(TooLarge, FaceText.MainMm, Math.Min(120, box.Width));

    private static Block Words(Connector connector, double width)
    {
        IEnumerable<string> lines = [.. Measures(connector), .. FaceWords.Assumed(connector), $"Numbering: {connector.Insert.Convention}."];
        return Block.Stack(0.9, lines.Select(l => FaceText.Lines(l, FaceText.MainMm, width, owner: connector.Designator)));
    }

    private static IEnumerable<string> Measures(Connector connector)
    {
        var contacts = connector.Insert.Contacts;
        yield return $"Filled: contact {contacts[0].Name}. Second ring: every tenth and the last, {contacts[^1].Name}.";
        if (contacts.Length > 1)
            yield return $"Smallest distance of contact centres {Mark(connector)}{Text(FaceGeometry.LeastSpacingMm(contacts))} mm. {Extent(connector)}";
        if (connector.Cutout is null && connector.Flange is null)
            yield return $"No panel hole of {connector.Designator} stated: contact centres only; the outline is computed from them, the part's shell is larger.";
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
