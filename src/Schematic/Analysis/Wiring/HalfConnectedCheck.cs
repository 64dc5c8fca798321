using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>A part with something on one end and nothing on the other, so that it cannot work.</summary>
public sealed class HalfConnectedCheck : ICheck
{
    private const string Rule = "half-connected";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Gaps;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
        from part in context.Panel.Parts
        from missing in MissingOf(context, part)
        select new Diagnostic(Rule, Severity.Error, $"{part.Designator} cannot work: {missing}.", part.Span)
        {
            Help = "Connect the open end, or leave the part out.",
        };

    private static IEnumerable<string> MissingOf(AnalysisContext context, Part part)
    {
        bool Used(string terminal) => context.IsUsed(part.At(terminal)) || part.NotTraced.Contains(terminal);
        return part switch
        {
            Supply => OpenEnds(part.Terminals.Select(t => t.Name), Used),
            Board board => board.Inputs.Any(i => Used(i.Terminal)) && !board.Grounds.Any(Used)
                ? [$"inputs are connected, but nothing is on its ground {NameList.Sentence(board.Grounds)}"] : [],
            Switch contact => OpenPole(contact.Pole, Used),
            Relay relay => OpenRelay(relay, Used),
            _ => PartTerminals.EndsOf(part).SelectMany(e => OpenEnds([e.From, e.To], Used)),
        };
    }

    private static IEnumerable<string> OpenRelay(Relay relay, Func<string, bool> used)
    {
        if (!relay.Terminals.Any(t => used(t.Name))) return [];
        var coil = PartTerminals.CoilOf(relay).SelectMany(e => new[] { e.From, e.To }).ToImmutableArray();
        var open = coil.Where(c => !used(c)).ToImmutableArray();
        IEnumerable<string> ofCoil = open.Length == 0 ? []
            : open.Length == coil.Length ? [$"nothing is on its coil {NameList.Sentence(coil)}"]
            : [$"nothing is on its terminal {open[0]}"];
        return ofCoil.Concat(relay.Poles.SelectMany(p => OpenPole(p.Pole, used)));
    }

    private static IEnumerable<string> OpenPole(Pole pole, Func<string, bool> used)
    {
        var throws = pole.Throws.Select(t => t.Terminal).Distinct().ToImmutableArray();
        var common = used(pole.Common);
        if (common && !throws.Any(used)) return [$"nothing is on its terminal {NameList.Sentence(throws)}"];
        return !common && throws.Any(used) ? [$"nothing is on its terminal {pole.Common}"] : [];
    }

    private static IEnumerable<string> OpenEnds(IEnumerable<string> ends, Func<string, bool> used)
    {
        var all = ends.ToImmutableArray();
        return all.Any(used) ? all.Where(e => !used(e)).Select(e => $"nothing is on its terminal {e}") : [];
    }
}
