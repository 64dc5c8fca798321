using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// A connector together with the one it plugs into, seen as one: a contact of the unit and the plug's contact that meets it
/// are one place.
/// </summary>
/// <param name="Main">The half that is declared first, or the connector alone.</param>
/// <param name="Mate">The other half, or null.</param>
public sealed record ConnectorPair(Connector Main, Connector? Mate)
{
    /// <summary>The contact names of both halves, each once.</summary>
    public IEnumerable<string> Names => Halves.SelectMany(h => h.Terminals.Select(t => t.Name)).Distinct(StringComparer.Ordinal);

    /// <summary>One or both halves.</summary>
    public IEnumerable<Connector> Halves => Mate is null ? [Main] : [Main, Mate];

    /// <summary>The contact of that name on each half.</summary>
    public IEnumerable<TerminalId> ContactsAt(string name) => Halves.Select(h => h.At(name));

    /// <summary>Whether a half declares the contact spare.</summary>
    public bool IsSpare(string name) => Halves.Any(h => h.Spares.Contains(name));

    /// <summary>Whether it is not known yet what one of its halves has on the contact.</summary>
    public bool IsNotTraced(string name) => Halves.Any(h => h.NotTraced.Contains(name));

    /// <summary>All connectors of a panel, mated ones together.</summary>
    public static ImmutableArray<ConnectorPair> Of(AnalysisContext context)
    {
        var pairs = ImmutableArray.CreateBuilder<ConnectorPair>();
        var taken = new HashSet<string>(StringComparer.Ordinal);
        var namedBy = context.Panel.Parts.OfType<Connector>().Where(c => c.Mates is not null)
            .ToLookup(c => c.Mates!, StringComparer.Ordinal);
        foreach (var connector in context.Panel.Parts.OfType<Connector>())
        {
            if (!taken.Add(connector.Designator)) continue;
            var mate = connector.Mates is { } name ? context.Part(name) as Connector : namedBy[connector.Designator].FirstOrDefault();
            if (mate is not null && !taken.Add(mate.Designator)) mate = null;
            pairs.Add(new ConnectorPair(connector, mate));
        }

        return pairs.ToImmutable();
    }
}
