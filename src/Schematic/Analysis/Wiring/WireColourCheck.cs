using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// Colours that a hand confuses: two wires of one connector whose body and tracer are exchanged, and green with yellow, the
/// colour kept for the protective earth (IEC 60445 as IEC 60757:2021 clause 5 names it), on a wire that is none.
/// </summary>
public sealed class WireColourCheck : ICheck
{
    private const string ExchangedRule = "exchanged-colours";
    private const string EarthRule = "earth-colour";

    // How earth terminals and nets are marked (IEC 60445: PE, FE; the rest common practice, no source).
    private static readonly ImmutableHashSet<string> EarthNames =
        ["PE", "FE", "E", "EARTH", "CHASSIS", "FRAME", "SHELL"];

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [ExchangedRule, EarthRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Conflicts;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) => [.. Exchanged(context), .. OnSomethingElse(context)];

    private static IEnumerable<Diagnostic> Exchanged(AnalysisContext context)
    {
        var told = new HashSet<(Wire, Wire)>();
        foreach (var connector in context.Panel.Parts.OfType<Connector>())
        {
            var wires = connector.Terminals.SelectMany(t => context.WiresAt(connector.At(t.Name)))
                .Where(w => w.Colour?.Tracer is not null).Distinct().ToImmutableArray();
            foreach (var alike in wires.GroupBy(w => UnorderedPair(w.Colour!)))
            {
                var first = alike.First();
                if (alike.FirstOrDefault(w => w.Colour!.IsExchanged(first.Colour!)) is not { } other || !told.Add((first, other))) continue;
                yield return new Diagnostic(
                    ExchangedRule,
                    Severity.Warning,
                    $"{first.Designator} ({first.Colour!.Code}) and {other.Designator} ({other.Colour!.Code}) on {connector.Designator} differ only in which colour is the body.",
                    other.Span)
                {
                    Subjects = [About.Wire(first), About.Wire(other), About.Part(connector)],
                    Help = "Give one of them another colour, or mark both ends of each before they lie in one bundle.",
                    Related = [new RelatedSpan(first.Span, $"wire {first.Designator}")],
                };
            }
        }
    }

    private static (ColourCode, ColourCode) UnorderedPair(WireColour colour)
    {
        var (one, other) = (colour.Main, colour.Tracer!.Value);
        return one <= other ? (one, other) : (other, one);
    }

    private static IEnumerable<Diagnostic> OnSomethingElse(AnalysisContext context) =>
        from wire in context.Panel.Wires
        where wire.Colour is { LooksLikeEarth: true } && !IsEarth(context, wire)
        select new Diagnostic(
            EarthRule,
            Severity.Warning,
            $"Wire {wire.Designator} is {(wire.Colour!.Main == ColourCode.GNYE ? "green-yellow" : "green and yellow")}, the colour of the protective earth, but {wire.From} and {wire.To} are no earth.",
            wire.Span)
        {
            Subjects = [About.Wire(wire)],
            Help = "Take another colour: whoever opens the box later trusts this one with a life. An earth is a terminal or a net named PE, FE, E, EARTH, CHASSIS, FRAME or SHELL.",
        };

    private static bool IsEarth(AnalysisContext context, Wire wire) =>
        context.Connectivity.Whole.MembersWith(wire.From).Any(t => IsEarthName(t.Name) || context.NetsAt(t).Any(n => IsEarthName(n.Name)));

    private static bool IsEarthName(string name) => EarthNames.Contains(name.ToUpperInvariant());
}
