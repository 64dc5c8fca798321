using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis;
using Schematic.Inserts;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Faces;

/// <summary>What is said beside a face.</summary>
internal static class FaceWords
{
    /// <summary>Contact 1, every tenth and the last are emphasised, as inserts of the trade mark them (from memory).</summary>
    public static bool IsEmphasised(int index, int count) => index == 0 || index == count - 1 || (index + 1) % 10 == 0;

    /// <summary>The mating face of a half. A half of unstated gender is drawn as pins.</summary>
    public static FaceView FrontOf(Connector connector) =>
        connector.Gender == Gender.Sockets ? FaceView.FrontOfSockets : FaceView.FrontOfPins;

    /// <summary>The wire side of a half.</summary>
    public static FaceView RearOf(Connector connector) => FrontOf(connector).OtherSide();

    /// <summary>What is seen, from where, and which way the numbers run in this view.</summary>
    public static ImmutableArray<string> Captions(Connector connector, FaceView view, ImmutableArray<ContactPosition> seen)
    {
        var name = view.IsWireSide() ? "Rear" : "Front";
        var of = connector.Gender == Gender.Unstated ? "of the contacts" : $"of the {(view.IsPins() ? "pins" : "sockets")}";
        var from = connector.Gender == Gender.Unstated
            ? $"seen from the {(view.IsWireSide() ? "wire" : "mating")} side" : view.SeenFrom();
        var sense = connector.Insert.HasGuideLine ? Sense(seen) : "";
        return [$"{name} {of}", sense.Length == 0 ? from : $"{from}; {sense}"];
    }

    /// <summary>How the contacts are counted and where their places are from.</summary>
    public static IEnumerable<string> Numbering(Connector connector)
    {
        yield return $"Numbering: {connector.Insert.Convention}.";
        if (connector.Insert.Source is { } source) yield return $"Positions: {source}.";
    }

    /// <summary>What was assumed of the arrangement, the scale, and the marks that occur.</summary>
    /// <param name="halves">The connectors on the sheet, the one that is drawn large first.</param>
    /// <param name="uses">What the contacts of the first are for.</param>
    /// <param name="scale">How the first is drawn.</param>
    /// <param name="second">How the smaller view is lettered.</param>
    public static IEnumerable<string> Marks(IEnumerable<Connector> halves, ImmutableArray<ContactUse> uses, FaceScale scale, FaceLettering second)
    {
        List<Connector> connectors = [.. halves];
        foreach (var assumed in Assumed(connectors)) yield return assumed;
        yield return string.Join(' ', Remarks(connectors[0], uses, scale, second));
    }

    /// <summary>What the program chose of the arrangement, each with the word that would state it.</summary>
    public static IEnumerable<string> Assumed(params IReadOnlyCollection<Connector> connectors) => connectors.SelectMany(c => c.Insert.Assumed.Select(a => (c.Designator, a.What, a.Word)))
        .GroupBy(a => (a.What, a.Word), a => a.Designator).Select(g =>
            $"{ValueText.AssumedMark} assumed, not stated: {g.Key.What}; '{g.Key.Word}' on {NameList.Sentence(g)} would state it. Compare with the part before you build on it.");

    private static IEnumerable<string> Remarks(Connector connector, ImmutableArray<ContactUse> uses, FaceScale scale, FaceLettering second)
    {
        var factor = scale.Factor.ToString("0.0", CultureInfo.InvariantCulture);
        yield return $"Scale of {connector.Designator} {factor} : 1; the circles are larger than the contacts.";
        if (scale.IsTurned) yield return "Turned a quarter to fit the sheet.";
        if (connector.Gender == Gender.Unstated) yield return "Pins or sockets not stated: drawn as pins.";
        if (scale.Lettering.NumberMm < FaceText.MainMm) yield return "Numbers are lowered to find room: a larger sheet gives larger lettering.";
        else if (second.NumberMm < FaceText.MainMm) yield return "Numbers of the smaller view are lowered to find room.";
        if (scale.Lettering.CodeMm is > 0 and < FaceText.MainMm && uses.Any(u => u.ColourCodes.Length > 0)) yield return "Colour letters in the circles are lowered to find room; the table has them as high as usual.";
        yield return "Heavy rim: first, every tenth and last contact.";
        if (connector.Insert.HasGuideLine) yield return "Dotted: order of numbering; a gap in it is a jump.";
        if (uses.Any(u => u.IsSpare)) yield return "Crossed rim: spare, no wire.";
        if (uses.Any(u => u.ColourCodes.Length > 0))
        {
            yield return scale.Lettering.CodeMm > 0
                ? "Fill and letters: wire colour, IEC 60757; lower part with strokes outside: second colour."
                : "Fill: wire colour, its letters are in the table; lower part with strokes outside: second colour.";
        }
    }

    /// <summary>Most steps of the numbering turn one way about the centre; that is the way it runs here.</summary>
    private static string Sense(ImmutableArray<ContactPosition> seen)
    {
        var turns = seen.Zip(seen.Skip(1), (a, b) => Math.Sign((a.XMm * b.YMm) - (a.YMm * b.XMm))).ToList();
        var clockwise = turns.Count(t => t < 0);
        var counter = turns.Count(t => t > 0);
        if (clockwise == counter) return "";
        return clockwise > counter ? "numbers run clockwise" : "numbers run counter-clockwise";
    }
}
