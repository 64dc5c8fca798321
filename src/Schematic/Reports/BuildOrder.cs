using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.Wiring;
using Schematic.Inserts;
using Schematic.Model;

namespace Schematic.Reports;

/// <summary>
/// The order in which a builder comes to the wires: connector by connector in soldering order, seen from the wire side; then
/// the other parts, terminal by terminal. Each wire is met at the end that is made first.
/// </summary>
public static class BuildOrder
{
    /// <summary>The view of the hand that solders: the rear of the half.</summary>
    public static FaceView WireSide(Connector connector) =>
        connector.Gender == Gender.Sockets ? FaceView.RearOfSockets : FaceView.RearOfPins;

    /// <summary>The parts that wires end on: connectors first, then the others, both in the order of the file.</summary>
    public static ImmutableArray<Part> Stations(AnalysisContext context) => StationsWhere(context, t => context.WiresAt(t).Any());

    /// <summary>The parts that anything is fastened on, in the same order.</summary>
    public static ImmutableArray<Part> Stations(AnalysisContext context, Fastenings fastenings) =>
        StationsWhere(context, t => fastenings.At(t).Any());

    private static ImmutableArray<Part> StationsWhere(AnalysisContext context, Func<TerminalId, bool> isMet) =>
        [.. context.Panel.Parts.Where(p => TerminalsOf(p).Any(isMet)).OrderBy(p => p is Connector ? 0 : 1)];

    /// <summary>The terminals of a part in the order in which wires are put on them.</summary>
    public static IEnumerable<TerminalId> TerminalsOf(Part part) => part is Connector connector
        ? SolderingOrder.Of(connector.Insert, WireSide(connector), connector.KeyDegrees).Select(c => part.At(c.Name))
        : part.Terminals.Select(t => part.At(t.Name));

    /// <summary>Every wire once, turned so that it begins at the end that is made first.</summary>
    public static ImmutableArray<(Wire Wire, TerminalId First, TerminalId Second)> Wires(AnalysisContext context)
    {
        var met = new HashSet<Wire>(ReferenceEqualityComparer.Instance);
        var order = ImmutableArray.CreateBuilder<(Wire, TerminalId, TerminalId)>();
        foreach (var terminal in Stations(context).SelectMany(TerminalsOf))
        {
            foreach (var wire in context.WiresAt(terminal).OrderBy(w => w.Designator, NaturalOrder.Comparer))
            {
                if (met.Add(wire)) order.Add((wire, terminal, wire.From == terminal ? wire.To : wire.From));
            }
        }

        return order.ToImmutable();
    }
}
