using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// Colours and lengths that are stated of some wires and not of others: one note for all of them. A file that states none of a
/// kind wants none; gauges are not counted, for the program chooses and says so.
/// </summary>
public sealed class WireDetailsCheck : ICheck
{
    private const string Rule = "wire-details";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Gaps;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var wires = context.Panel.Wires;
        var colourless = Without(wires, w => w.Colour is not null);
        var endless = Without(wires, w => w.LengthMm is not null);
        if (colourless.IsEmpty && endless.IsEmpty) yield break;
        var parts = new[] { Part("colour", colourless), Part("length", endless) }.Where(p => p.Length > 0);
        yield return new Diagnostic(
            Rule, Severity.Note, $"Not stated yet: {string.Join("; ", parts)}.", colourless.Concat(endless).MinBy(wires.IndexOf)!.Span)
        {
            Subjects = [.. colourless.Union(endless).Select(About.Wire)],
            Help = "Add what is missing when it is known; lists show it as not known.",
        };
    }

    /// <summary>The wires without a detail that others have.</summary>
    private static ImmutableArray<Wire> Without(ImmutableArray<Wire> wires, Func<Wire, bool> has) =>
        wires.Any(has) ? [.. wires.Where(w => !has(w))] : [];

    private static string Part(string what, ImmutableArray<Wire> wires) =>
        wires.IsEmpty ? "" : $"the {what} of {NameList.Sentence(wires.Select(w => w.Designator))}";
}
