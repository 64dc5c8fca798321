using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Diagnostics;

namespace Schematic.Analysis.Positions;

/// <summary>
/// A switch contact that no reachable position closes, or that none opens, or that other contacts always bridge. A relay's
/// contacts idle when its coil does, and that is reported of the coil.
/// </summary>
public sealed class IdleContactCheck : ICheck
{
    private const string NeverCloses = "contact-never-closes";
    private const string NeverOpens = "contact-never-opens";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [NeverCloses, NeverOpens];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        foreach (var contact in proof.Circuit.Circuit.Contacts.Where(c => !c.IsInside))
        {
            var closed = proof.Circuit.Closed(contact);
            if (!contact.IsRelayContact && !proof.ComesAbout(closed))
                yield return Report(NeverCloses, contact, "never closes", "No position that can be reached closes it");
            else if (!contact.IsRelayContact && !proof.ComesAbout(proof.Circuit.Store.Not(closed)))
                yield return Report(NeverOpens, contact, "never opens", "Every position that can be reached closes it");
            else if (IsBridged(proof, contact))
                yield return Report(NeverOpens, contact, "never opens its circuit", "Whenever it is open, other contacts join the same two terminals") with
                {
                    Trace = Bridge(proof, contact),
                };
        }
    }

    private static Diagnostic Report(string rule, Contact contact, string what, string why) =>
        new(rule, Severity.Warning, $"The contact {contact.Common} to {contact.Throw} {what}.", contact.Span)
        {
            Subjects = [About.Terminal(contact.Common), About.Terminal(contact.Throw)],
            Help = why + ": check the positions named for it and what is wired beside it.",
        };

    private static bool IsBridged(PositionProof proof, Contact contact)
    {
        if (contact.CommonNode < 0 || contact.CommonNode == contact.ThrowNode || !HasOtherWay(proof.Circuit.Circuit, contact)) return false;
        var open = Open(proof, contact);
        return proof.ComesAbout(open)
            && !proof.ComesAbout(proof.Circuit.Store.AndNot(open, proof.Circuit.JoinedFrom(contact.CommonNode)[contact.ThrowNode]));
    }

    /// <summary>When it is open and no supply is shorted: what a short joins says nothing about the contact.</summary>
    private static Diagram Open(PositionProof proof, Contact contact) =>
        proof.Circuit.Store.Not(proof.Circuit.Store.Or(proof.Circuit.Closed(contact), proof.Circuit.AnyShort));

    private static ImmutableArray<TraceStep> Bridge(PositionProof proof, Contact contact) =>
        proof.States.Nearest(Open(proof, contact)) is { } witness
            ? proof.Trace(witness, proof.Joined(witness.State, contact.Common, contact.Throw))
            : [];

    /// <summary>Whether some other contacts, were they closed, would join the same two nodes: only then is it worth proving.</summary>
    private static bool HasOtherWay(Circuit circuit, Contact contact)
    {
        var seen = new HashSet<int> { contact.CommonNode };
        var waiting = new Stack<int>(seen);
        while (waiting.TryPop(out var node))
        {
            foreach (var other in circuit.ContactsAt(node).Where(c => c != contact))
            {
                var next = other.Other(node);
                if (next == contact.ThrowNode) return true;
                if (seen.Add(next)) waiting.Push(next);
            }
        }

        return false;
    }
}
