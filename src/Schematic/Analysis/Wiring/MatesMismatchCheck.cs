using System.Collections.Immutable;
using System.Globalization;
using Schematic.Diagnostics;
using Schematic.Inserts;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>Two connectors that are said to plug into each other and cannot.</summary>
public sealed class MatesMismatchCheck : ICheck
{
    private const string Rule = "mates-mismatch";

    // Published tables round to a hundredth of a millimetre or a thousandth of an inch; contacts stand 2 mm apart and more.
    private const double PlaceToleranceMm = 0.3;

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Conflicts;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var partnerOf = new Dictionary<string, Connector>(StringComparer.Ordinal);
        foreach (var half in context.Panel.Parts.OfType<Connector>().Where(c => c.Mates is not null))
        {
            if (half.Mates == half.Designator)
            {
                yield return Report(half, $"Connector {half.Designator} is said to mate itself.", "Name the other half.");
            }
            else if (context.Part(half.Mates!) is not { } named)
            {
                continue; // An unknown name is reported where names are bound.
            }
            else if (named is not Connector other)
            {
                yield return Report(half, $"Connector {half.Designator} is said to mate {half.Mates}, which is no connector.", "Name a connector.");
            }
            else if (ThirdParty(half, other, partnerOf) is { } third)
            {
                yield return Report(half, third, "A connector has one mate: give each half its own counterpart.")
                    with { Subjects = [About.Part(half), About.Part(other)], Related = [new RelatedSpan(other.Span, $"{other.Designator} is declared here")] };
            }
            else if (!AreRecorded(half, other, partnerOf))
            {
                (partnerOf[half.Designator], partnerOf[other.Designator]) = (other, half);
                foreach (var finding in Compare(half, other)) yield return finding;
            }
        }
    }

    private static bool AreRecorded(Connector half, Connector other, Dictionary<string, Connector> partnerOf) =>
        partnerOf.TryGetValue(half.Designator, out var partner) && partner == other;

    private static string? ThirdParty(Connector half, Connector other, Dictionary<string, Connector> partnerOf)
    {
        if (partnerOf.TryGetValue(other.Designator, out var partner) && partner.Designator != half.Designator)
            return $"{half.Designator} and {partner.Designator} are both said to mate {other.Designator}.";
        if (partnerOf.TryGetValue(half.Designator, out partner) && partner.Designator != other.Designator)
            return $"{half.Designator} is said to mate {other.Designator}, and {partner.Designator} is said to mate {half.Designator}.";
        return other.Mates is { } mates && mates != half.Designator
            ? $"{half.Designator} is said to mate {other.Designator}, but {other.Designator} is said to mate {mates}."
            : null;
    }

    private static IEnumerable<Diagnostic> Compare(Connector half, Connector other)
    {
        if (half.Gender == other.Gender && half.Gender != Gender.Unstated)
        {
            var kind = half.Gender == Gender.Pins ? "pins" : "sockets";
            yield return Pair(half, other, $"{half.Designator} and {other.Designator} both carry {kind}.", "One half of a mated pair carries pins, the other sockets.");
        }

        if (Difference(half, other) is { } difference)
            yield return Pair(half, other, difference, "Two halves that mate have the same insert, numbered as mirrors of each other; leave the insert out of one half and it takes the other's.");
        else if (half.Terminals.Select(t => t.Name).FirstOrDefault(n => half.SizeOf(n) is { } a && other.SizeOf(n) is { } b && a != b) is { } name)
            yield return Pair(half, other, $"Contact {name} is of size {half.SizeOf(name)} in {half.Designator} and of size {other.SizeOf(name)} in {other.Designator}.", "Contacts that mate are of one size.");
    }

    private static string? Difference(Connector half, Connector other)
    {
        var mine = half.Insert.Contacts;
        var theirs = other.Insert.Contacts;
        if (mine.Length != theirs.Length)
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"{half.Designator} has {mine.Length} contacts and {other.Designator} has {theirs.Length}.");
        }

        var byName = new Dictionary<string, ContactPosition>(StringComparer.Ordinal);
        foreach (var contact in theirs) byName.TryAdd(contact.Name, contact);
        if (mine.FirstOrDefault(c => !byName.ContainsKey(c.Name)) is { } missing)
            return $"{half.Designator} has a contact {missing.Name}, {other.Designator} has none of that name.";
        return mine.FirstOrDefault(c => !IsNear(c, byName[c.Name])) is { } moved
            ? $"Contact {moved.Name} does not sit in the same place in {half.Designator} and {other.Designator}."
            : null;
    }

    private static bool IsNear(ContactPosition a, ContactPosition b) =>
        Math.Abs(a.XMm - b.XMm) <= PlaceToleranceMm && Math.Abs(a.YMm - b.YMm) <= PlaceToleranceMm;

    private static Diagnostic Pair(Connector half, Connector other, string message, string help) =>
        Report(half, message, help) with { Subjects = [About.Part(half), About.Part(other)], Related = [new RelatedSpan(other.Span, $"{other.Designator} is declared here")] };

    private static Diagnostic Report(Connector half, string message, string help) =>
        new(Rule, Severity.Error, message, half.Span) { Subjects = [About.Part(half)], Help = help };
}
