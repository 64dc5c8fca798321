using System.Collections.Immutable;
using System.Globalization;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// Compares each net with the wires where a file has both: a net that no wire carries yet, which is a note, for nets and wires
/// are written one after the other; a member that no wire reaches yet; a net that the wires leave in pieces; a wire that takes
/// the net to a contact it does not list. A net gives one finding, the gravest.
/// </summary>
public sealed class NetWiringCheck : ICheck
{
    private const string BrokenRule = "broken-net";
    private const string UnwiredRule = "unwired-net-member";
    private const string NotWiredRule = "net-not-wired";
    private const string UnlistedRule = "unlisted-net-member";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [BrokenRule, NotWiredRule, UnwiredRule, UnlistedRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Gaps;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        if (context.Panel.Wires.Length == 0) return [];
        return context.Panel.Nets
            .Where(n => n.Members.Select(m => m.Terminal).Distinct().Skip(1).Any() && !context.Nets.IsInConflict(n))
            .Select(n => Judge(context, n))
            .OfType<Diagnostic>();
    }

    private static Diagnostic? Judge(AnalysisContext context, Net net)
    {
        var graph = context.Connectivity.ByWires;
        var pieces = net.Members.DistinctBy(m => m.Terminal).GroupBy(m => graph.ConductorOf(m.Terminal))
            .Select(g => new Piece([.. g], graph.Conductors[g.Key].Any(t => context.WiresAt(t).Any())))
            .ToImmutableArray();
        var strays = Strays(context, net).ToImmutableArray();
        if (pieces.Count(p => p.IsWired) > 1) return Broken(net, pieces);
        if (pieces.Length > 1) return Unwired(net, pieces, strays);
        return strays.Length > 0 ? Unlisted(net, strays) : null;
    }

    private static Diagnostic Broken(Net net, ImmutableArray<Piece> pieces)
    {
        var ends = pieces.Select(p => p.Members[0].Terminal).ToImmutableArray();
        return new Diagnostic(
            BrokenRule,
            Severity.Error,
            $"The wires leave net {net.Name} in {pieces.Length.ToString(CultureInfo.InvariantCulture)} pieces.",
            net.Span)
        {
            Help = $"Add a wire between the pieces, such as {ends[0]} -> {ends[1]}, or divide the net.",
            Related = [.. pieces.Skip(1).Take(3).Select(p => new RelatedSpan(p.Members[0].Span, $"no wire joins {p.Members[0].Terminal} to {ends[0]}"))],
            Subjects = [About.Net(net)],
            Trace =
            [
                .. pieces.Select((p, i) => new FactStep($"piece {(i + 1).ToString(CultureInfo.InvariantCulture)}: {p.Text}")
                {
                    Subjects = [.. p.Members.Select(m => About.Terminal(m.Terminal))],
                }),
            ],
        };
    }

    private static Diagnostic Unwired(Net net, ImmutableArray<Piece> pieces, ImmutableArray<Stray> strays)
    {
        if (pieces.All(p => !p.IsWired))
        {
            return new Diagnostic(NotWiredRule, Severity.Note, $"Net {net.Name} is not wired yet.", net.Span)
            {
                Subjects = [About.Net(net)],
                Help = $"State the wires between {NameList.Sentence(net.Members.Select(m => m.Terminal.ToString()))} when they are planned.",
            };
        }

        var left = pieces.Where(p => !p.IsWired).SelectMany(p => p.Members).ToImmutableArray();
        var names = NameList.Sentence(left.Select(m => m.Terminal.ToString()));
        var stray = strays.FirstOrDefault();
        return new Diagnostic(
            UnwiredRule,
            stray is null ? Severity.Warning : Severity.Error,
            stray is null
                ? $"Net {net.Name} is wired in part: no wire goes to {names} yet."
                : $"{names} {(left.Length == 1 ? "is" : "are")} listed in net {net.Name}, but no wire goes there; wire {stray.Wire.Designator} goes to {stray.End} instead.",
            left[0].Span)
        {
            Subjects = [About.Net(net), .. left.Select(m => About.Terminal(m.Terminal))],
            Help = stray is null
                ? $"Add a wire from {pieces.First(p => p.IsWired).Members[0].Terminal} to {left[0].Terminal}."
                : $"Move that end of wire {stray.Wire.Designator} to {left[0].Terminal}, or correct the net.",
            Related = stray is null ? [] : [new RelatedSpan(stray.Span, $"wire {stray.Wire.Designator} ends on {stray.End}")],
        };
    }

    private static Diagnostic Unlisted(Net net, ImmutableArray<Stray> strays) => new(
        UnlistedRule,
        Severity.Warning,
        $"Wire {strays[0].Wire.Designator} takes net {net.Name} to {NameList.Sentence(strays.Select(s => s.End.ToString()))}, which the net does not list.",
        strays[0].Span)
    {
        Subjects = [About.Net(net), About.Wire(strays[0].Wire), .. strays.Select(s => About.Terminal(s.End))],
        Help = $"Add {strays[0].End} to the net, or move the end of the wire.",
        Related = [new RelatedSpan(net.Span, $"net {net.Name}")],
    };

    /// <summary>Wire ends of the net's conductor that the net does not list. Strips and splices are ways, not ends.</summary>
    private static IEnumerable<Stray> Strays(AnalysisContext context, Net net)
    {
        var made = context.Connectivity.Fixed;
        var graph = context.Connectivity.ByWires;
        var listed = net.Members.Select(m => made.ConductorOf(m.Terminal)).ToHashSet();
        return
            from conductor in net.Members.Select(m => graph.ConductorOf(m.Terminal)).Distinct()
            from terminal in graph.Conductors[conductor]
            where !listed.Contains(made.ConductorOf(terminal)) && context.Part(terminal.Part) is not (TerminalStrip or Splice)
            let wire = context.WiresAt(terminal).FirstOrDefault()
            where wire is not null
            select new Stray(wire, terminal, wire.From == terminal ? wire.FromSpan : wire.ToSpan);
    }

    private sealed record Piece(ImmutableArray<NetMember> Members, bool IsWired)
    {
        public string Text => string.Join(' ', Members.Select(m => m.Terminal.ToString()));
    }

    private sealed record Stray(Wire Wire, TerminalId End, SourceSpan Span);
}
