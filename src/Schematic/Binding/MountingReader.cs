using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Reads what a connector needs in a panel: the hole and the screw holes of its flange.</summary>
internal sealed class MountingReader(ClauseReader reader, Scope scope, BindingReporter report)
{
    /// <summary>The panel hole: <c>cutout 34 mm</c> is round, <c>cutout 41 mm by 11 mm</c> is not.</summary>
    public PanelCutout? Cutout()
    {
        if (reader.Find("cutout") is not { } clause) return null;
        return Lengths(clause) switch
        {
            [var diameter] => new PanelCutout(diameter, diameter, IsRound: true),
            [var width, var height] => new PanelCutout(width, height, IsRound: false),
            _ => null,
        };
    }

    /// <summary>
    /// The screw holes: <c>flange 4 holes 3.2 mm on 38 mm</c> on a square, <c>... on 38 mm by 30 mm</c> on a rectangle,
    /// <c>flange 2 holes 3.1 mm on 47 mm</c> side by side.
    /// </summary>
    public FlangeHoles? Flange()
    {
        if (reader.Find("flange") is not { } clause) return null;
        var number = clause.All<NumberSyntax>().First();
        if (number.Value is not (2 or 4))
        {
            report.OutOfRange(scope.At(number.Span), $"A flange with {number.Text} holes is not known.", "Write 2 holes or 4 holes.");
            return null;
        }

        if (number.Value == 2 && clause.All<QuantitySyntax>().Count() > 2)
        {
            var second = clause.All<QuantitySyntax>().Last();
            report.OutOfRange(
                scope.At(second.Span), "Two holes stand side by side and have one distance.", "Leave `by` and what follows away.");
            return null;
        }

        return Lengths(clause) switch
        {
            [var hole, var apart] => new FlangeHoles((int)number.Value, hole, apart, number.Value == 2 ? 0 : apart),
            [var hole, var across, var along] => new FlangeHoles(4, hole, across, along),
            _ => null,
        };
    }

    /// <summary>The lengths of a clause; none when one of them is wrong.</summary>
    private List<double> Lengths(ClauseSyntax clause)
    {
        var lengths = clause.All<QuantitySyntax>().Select(q => reader.Value(q, Dimension.Length, "a length", range: QuantityRange.OfInsert)).ToList();
        return lengths.Contains(null) ? [] : [.. lengths.Select(l => l!.Value)];
    }
}
