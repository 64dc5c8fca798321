using System.Collections.Immutable;
using Schematic.Fonts;
using Schematic.Layout.Shapes;

namespace Schematic.Layout.Wirings;

/// <summary>A designator and quiet words below it, at the head of a box.</summary>
internal sealed record Heading(string Name, ImmutableArray<string> Words, double WidthMm, double HeightMm)
{
    private const double Inset = 1.2;

    /// <summary>Words wrapped at the box's width or at the usual one, whichever is wider.</summary>
    public static Heading Of(string name, IEnumerable<string> words, double boxWidth)
    {
        var shown = Lettering.Fit(name, Metrics.HeadHeight, WiringWeights.Usual.LongestNameMm, bold: true);
        var room = Math.Max(boxWidth - (2 * Inset), WiringWeights.Usual.WordsMm - (2 * Inset));
        ImmutableArray<string> lines = [.. words.Where(w => w.Length > 0).SelectMany(w => Lettering.Wrap(w, Metrics.QuietHeight, room, Metrics.MostWordLines))
            .Select(l => Lettering.Fit(l, Metrics.QuietHeight, WiringWeights.Usual.LongestNameMm))];
        var width = lines.Select(l => Lettering.WidthMm(l, Metrics.QuietHeight)).Append(Lettering.WidthMm(shown, Metrics.HeadHeight, bold: true)).Max();
        return new Heading(shown, lines, width + (2 * Inset), 4.8 + (lines.Length * Metrics.QuietStep));
    }

    public void Draw(Canvas canvas, string owner, double left, double top)
    {
        canvas.Text(owner, Name, left + Inset, top + 3.8, Metrics.HeadHeight, bold: true);
        canvas.QuietLines(owner, Words, left + Inset, top + 3.9 + Metrics.QuietStep);
    }
}

/// <summary>What stands at the foot of a thing about the terminals that it does not show.</summary>
internal static class Unused
{
    /// <summary>"spare" what was left unused on purpose, "nothing on" what was not.</summary>
    public static ImmutableArray<string> Words(WiringMap map, Model.Part part, double room)
    {
        var joined = part is Model.TerminalStrip strip ? strip.Jumpers.SelectMany(j => j).ToHashSet(StringComparer.Ordinal) : [];
        var idle = part.Terminals.Where(t => !joined.Contains(t.Name) && !map.EndsAt(part.At(t.Name)).Any()
            && !(map.MatedContact(part.At(t.Name)) is { } mate && map.EndsAt(mate).Any())).Select(t => part.At(t.Name)).ToList();
        return
        [
            .. Line("not traced", idle.Where(map.IsNotTraced)),
            .. Line("spare", idle.Where(t => !map.IsNotTraced(t) && map.IsSpare(t))),
            .. Line("nothing on", idle.Where(t => !map.IsNotTraced(t) && !map.IsSpare(t))),
        ];

        IEnumerable<string> Line(string word, IEnumerable<Model.TerminalId> terminals)
        {
            var names = TerminalWords.Names(terminals.Select(t => t.Name));
            return names.Length == 0 ? [] : Lettering.Wrap($"{word} {names}", Metrics.QuietHeight, room)
                .Select(l => Lettering.Fit(l, Metrics.QuietHeight, room));
        }
    }
}
