using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.Quantities;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Labels;

/// <summary>
/// Which labels one set needs, in the order of building: for every wire one at each end with the terminal it goes to, and
/// between them as many as <see cref="WireMarks"/> asks for; for every cable one at each end.
/// </summary>
public static class WireLabels
{
    /// <summary>Labels that are printed for one wire; a longer one than about 23 m carries more, and labels by the hundred are printed on a reel.</summary>
    public const int Most = 60;

    /// <summary>Whether a wire of that length carries more labels than are printed.</summary>
    public static bool HasMore(double? lengthMm) => lengthMm is { } length && WireMarks.Count(length) > Most;

    /// <summary>The labels of one set.</summary>
    public static ImmutableArray<WireLabel> Of(AnalysisContext context) =>
    [
        .. BuildOrder.Wires(context).SelectMany(w => OfWire(w.Wire, w.First, w.Second)),
        .. context.Panel.Cables.SelectMany(c => Enumerable.Repeat(new WireLabel(c.Designator, ""), 2)),
    ];

    private static IEnumerable<WireLabel> OfWire(Wire wire, TerminalId first, TerminalId second)
    {
        // A core is marked at its ends; a wire without length at least there too.
        var marks = wire is { LengthMm: { } length, Cable: null } ? Math.Min(Most, WireMarks.Count(length)) : 2;
        if (marks == 1) yield return new WireLabel(wire.Designator, $"{first} – {second}");
        if (marks < 2) yield break;
        yield return new WireLabel(wire.Designator, first.ToString());
        for (var i = 2; i < marks; i++) yield return new WireLabel(wire.Designator, "");
        yield return new WireLabel(wire.Designator, second.ToString());
    }
}
