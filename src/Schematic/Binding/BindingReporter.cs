using System.Collections.Immutable;
using System.Globalization;
using Schematic.Diagnostics;
using Schematic.Language;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>
/// The findings about names and values; all their wording is here. A file that is used twice is read once: its findings are
/// given once.
/// </summary>
internal sealed class BindingReporter
{
    /// <summary>Letters compared in search of near names, after which none are proposed any more: garbage has no near names.</summary>
    private const long MostComparisons = 20_000_000;

    /// <summary>More findings than this nobody reads.</summary>
    private const int MostFindings = 20_000;

    private static readonly char[] Digits = [.. "0123456789"];

    private readonly ImmutableArray<Diagnostic>.Builder _found = ImmutableArray.CreateBuilder<Diagnostic>();
    private readonly HashSet<(string Rule, SourceText Source, TextSpan Span, string Message)> _seen = [];
    private long _comparisons;

    /// <summary>What was found, in the order found.</summary>
    public ImmutableArray<Diagnostic> Found => _found.ToImmutable();

    public void AddAll(ImmutableArray<Diagnostic> found)
    {
        foreach (var diagnostic in found) Add(diagnostic);
    }

    public void UnknownName(SourceSpan span, string name, string kinds, IEnumerable<string> known)
    {
        var nearest = Nearest(name, known);
        Add("unknown-name", $"{Capital(kinds)} named `{name}` is not declared.", span, HelpFor(name, nearest)
            ?? $"Declare it, or look at the name: {kinds} is meant here.", Written(span, name, nearest));
    }

    public void WrongKind(SourceSpan span, string name, string isKind, string needed, SourceSpan declared) =>
        Add("wrong-kind", $"`{name}` is {isKind}; {needed} is needed here.", span, $"Name {needed}.",
            new RelatedSpan(declared, "declared here"));

    private static string? Transposed(string contact, IReadOnlyCollection<string> known) =>
        contact is [>= '0' and <= '9' and var tens, >= '0' and <= '9' and var ones] && known.Contains($"{ones}{tens}") ? $"{ones}{tens}" : null;

    public void UnknownContact(
        SourceSpan span, string part, IReadOnlyList<string> contacts, IReadOnlyCollection<string> known, SourceSpan declared)
    {
        var contact = contacts[0];
        var more = contacts.Count > 1 ? $", and {contacts.Count - 1} more of this range are missing" : "";
        var nearest = Nearest(contact, known);
        var isOtherNumber = nearest?.TrimEnd(Digits) == contact.TrimEnd(Digits);
        var help = DashRange(contact, known) is { } range ? $"A range has two dots: {part}:{range}."
            : Transposed(contact, known) is { } meant ? $"Did you mean `{meant}`? {Terminals(part, known)}"
            : isOtherNumber ? Terminals(part, known) : HelpFor(contact, nearest) ?? Terminals(part, known);
        Add("unknown-contact", $"`{part}` has no contact `{contact}`{more}.", span, help,
            contacts.Count > 1 ? [] : Written(span, contact, DashRange(contact, known) ?? (isOtherNumber ? null : nearest)),
            new RelatedSpan(declared, "declared here"));
    }

    public void UnknownPosition(SourceSpan span, string subject, string state, IReadOnlyCollection<string> known, SourceSpan declared) =>
        Add("unknown-position", $"`{subject}` has no position `{state}`.", span,
            HelpFor(state, Nearest(state, known)) ?? $"It has: {string.Join(", ", known)}.", Written(span, state, Nearest(state, known)),
            new RelatedSpan(declared, "declared here"));

    public void UnknownState(SourceSpan span, string subject, string isKind, string states) =>
        Add("unknown-position", $"`{subject}` is {isKind}: it is {states}.", span, $"Write one of them: {subject} {states.Split(' ', ',')[0]}.");

    public void UnknownWord(SourceSpan span, string rule, string what, string word, IReadOnlyCollection<string> known) =>
        Add(rule, $"`{word}` is not {what}.", span,
            HelpFor(word, Nearest(word, known)) ?? $"Known: {string.Join(", ", known)}.", Written(span, word, Nearest(word, known)));

    /// <summary>A word that is no colour: the usual name of one that has another at the bench, or the nearest known.</summary>
    public void UnknownColour(SourceSpan span, string word)
    {
        var usual = string.Join('/', word.Split('/').Select(w => Colours.UsualNameOf(w) ?? w));
        if (Colours.Find(usual) is null) UnknownWord(span, "unknown-colour", "a colour", word, Colours.Names);
        else Add("unknown-colour", $"`{word}` is not a colour.", span, $"Write {usual}: colours are called as in IEC 60757.", Written(span, word, usual));
    }

    public void DuplicateName(SourceSpan span, string name, SourceSpan first) =>
        Add("duplicate-name", $"The name `{name}` is declared twice.", span, "Give each a name of its own.",
            new RelatedSpan(first, "first declared here"));

    public void StatedTwice(SourceSpan span, string what, SourceSpan first) =>
        Add("stated-twice", $"{Capital(what)} is stated twice.", span, "Keep the one that holds.",
            new RelatedSpan(first, "first stated here"));

    public void Contradiction(SourceSpan span, string message, string help, SourceSpan other) =>
        Add("contradiction", message, span, help, new RelatedSpan(other, "the other is here"));

    public void MissingValue(SourceSpan span, string message, string help) => Add("missing-value", message, span, help);

    public void NoPart(SourceSpan span, string contact, string? terminal) =>
        Add("missing-value", $"`{contact}` does not say of which part it is a contact.", span,
            terminal is null ? $"Write the part before it: J1:{contact}." : $"Join part and contact by a colon: {terminal}.");

    public void UnknownHere(SourceSpan span) =>
        Add("missing-value", "A contact that is not traced cannot be named here.", span,
            "A question mark stands where a device is joined to its unit: lamp DS1 28 V 40 mA { J1:2 ? }. Leave it out here.");

    /// <summary>
    /// A number whose unit is missing or measures something else. <paramref name="meant"/> is the quantity that was meant, where it
    /// is certain; <paramref name="possible"/> what the unit may measure.
    /// </summary>
    public void WrongUnit(
        SourceSpan span, QuantitySyntax quantity, string expected, string? meant = null, IEnumerable<Dimension>? possible = null)
    {
        var found = quantity.Unit.Length == 0 ? "has no unit"
            : quantity.Dimension == Dimension.Unknown ? $"has an unknown unit, `{quantity.Unit}`"
            : $"is {UnitWords.Kind(quantity.Dimension)}";
        // As written, but for the width of gaps: laying a file out changes no message.
        var asWritten = string.Join(' ', span.Source.Slice(span.Span).ToString().Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries));
        List<string> written = meant is not null ? [meant]
            : UnitWords.Near(quantity) is { } near ? [$"{quantity.Number} {near}"]
            : quantity.Unit.Length == 0 ? [.. (possible ?? []).SelectMany(UnitWords.Usual).Select(u => $"{quantity.Number} {u}")]
            : [];
        Add("wrong-unit", $"{asWritten} {found}; {expected} is expected here.", span,
            written.Count == 1 && quantity.Unit.Length > 0 ? $"Did you mean {written[0]}?" : $"Give {expected} with its unit.",
            [.. written.Select(w => Repair.Write(span, w))]);
    }

    public void OutOfRange(SourceSpan span, string message, string help) => Add("out-of-range", message, span, help);

    public void CountMismatch(SourceSpan span, string message, string help, SourceSpan? other = null) =>
        Add("count-mismatch", message, span, help, [.. other is { } o ? [new RelatedSpan(o, "to match this")] : Array.Empty<RelatedSpan>()]);

    public void InsertFault(SourceSpan span, string message, string help, bool isWarning) => Add(new Diagnostic(
        isWarning ? "unclear-letters" : "insert-geometry", isWarning ? Severity.Warning : Severity.Error, message, span)
    {
        Help = help,
    });

    public void NotOnBench(SourceSpan span, string terminal, string side) =>
        Add("not-on-bench", $"No lead can be put on {terminal} while {side} lies on the bench.", span,
            "Look at the contact, or state what was measured: unit, harness or mated.");

    public void MissingFile(SourceSpan span, string path) =>
        Add("missing-file", $"The file \"{path}\" is not there.", span, "The path starts in the folder of this file; look at its spelling.");

    public void UnreadableFile(SourceSpan span, string path) =>
        Add("missing-file", $"The file \"{path}\" cannot be read.", span, "It may be a folder, too large, or not permitted to be read.");

    public void OutsideFolder(SourceSpan span, string path) =>
        Add("outside-folder", $"The file \"{path}\" lies outside the folder of the main file.", span,
            "Copy it into the folder, or start the program with --allow-outside.");

    public void UseCycle(SourceSpan span, IReadOnlyList<string> chain) =>
        Add("use-cycle", $"The file uses itself: {string.Join(" uses ", chain)}.", span, "Take one of these use statements out.");

    public void TooManyStatements(SourceSpan span, int limit) =>
        Add("out-of-range", $"The panel has more than {limit.ToString("N0", CultureInfo.InvariantCulture)} statements, used files and ranges counted out.", span,
            "What follows is left out. Look for a file that is used many times over, or for a range too long.");

    public void TooManyUses(SourceSpan span, int limit) =>
        Add("out-of-range", $"More than {limit.ToString("N0", CultureInfo.InvariantCulture)} files are used in all.", span,
            "Look for a file that uses others many times over.");

    private void Add(string rule, string message, SourceSpan span, string help, params ImmutableArray<RelatedSpan> related) =>
        Add(rule, message, span, help, [], related);

    private void Add(
        string rule, string message, SourceSpan span, string help, ImmutableArray<Repair> repairs, params ImmutableArray<RelatedSpan> related) =>
        Add(new Diagnostic(rule, Severity.Error, HiddenCharacters.Show(message), span)
        {
            Help = HiddenCharacters.Show(help),
            Repairs = repairs,
            Related = related,
        });

    /// <summary>Writes the nearest known word where an unknown one ends a span; nothing where it does not stand there as it is.</summary>
    private static ImmutableArray<Repair> Written(SourceSpan span, string word, string? nearest)
    {
        var at = new TextSpan(span.Span.End - word.Length, word.Length);
        return nearest is null || at.Start < span.Span.Start || !span.Source.Slice(at).SequenceEqual(word)
            ? []
            : [Repair.Write(new SourceSpan(span.Source, at), nearest)];
    }

    private void Add(Diagnostic diagnostic)
    {
        if (_found.Count > MostFindings || !_seen.Add((diagnostic.Rule, diagnostic.Span.Source, diagnostic.Span.Span, diagnostic.Message))) return;
        _found.Add(_found.Count < MostFindings ? diagnostic : new Diagnostic(
            "out-of-range", Severity.Error, $"More than {MostFindings.ToString("N0", CultureInfo.InvariantCulture)} findings: the others are left out.", diagnostic.Span)
        {
            Help = "Correct these first.",
        });
    }

    private string? Nearest(string name, IEnumerable<string> known)
    {
        if (_comparisons > MostComparisons) return null;
        return Spelling.Nearest(name, known.Select(k =>
        {
            _comparisons += k.Length;
            return k;
        }));
    }

    private static string? HelpFor(string name, string? nearest) =>
        nearest is null ? null
        : string.Equals(nearest, name, StringComparison.OrdinalIgnoreCase) ? $"Did you mean `{nearest}`? Capital and small letters differ."
        : $"Did you mean `{nearest}`?";

    /// <summary>The range that <c>IN1-IN4</c> or <c>1-4</c> was meant to be, where both ends are known.</summary>
    private static string? DashRange(string contact, IReadOnlyCollection<string> known)
    {
        for (var dash = contact.IndexOf('-', 1 < contact.Length ? 1 : 0); dash > 0; dash = contact.IndexOf('-', dash + 1))
        {
            var (from, to) = (contact[..dash], contact[(dash + 1)..]);
            if (!known.Contains(from)) continue;
            if (known.Contains(to)) return $"{from}..{to}";
            var letters = from.TrimEnd(Digits);
            if (letters.Length > 0 && known.Contains(letters + to)) return $"{from}..{letters}{to}";
        }

        return null;
    }

    private static string Terminals(string part, IReadOnlyCollection<string> known)
    {
        var names = known.Count <= 12 ? string.Join(" ", known) : $"{string.Join(" ", known.Take(3))} … {known.Last()}";
        return known.Count == 0 ? $"`{part}` has no contacts." : $"`{part}` has: {names}.";
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
