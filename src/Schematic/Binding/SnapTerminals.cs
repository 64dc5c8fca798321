using System.Collections.Immutable;
using Schematic.Language;

namespace Schematic.Binding;

/// <summary>
/// The terminals of reed contacts and microswitches: COM, NO and NC as they are stamped on most of them (common practice, no source),
/// a plain reed contact 1 and 2; or names that the file states.
/// </summary>
internal static class SnapTerminals
{
    /// <summary>The clause that states other names.</summary>
    public const string Keyword = "terminals";

    /// <summary>The names in their order: the common, then the throw that makes, then the one that breaks, as far as there are.</summary>
    public static ImmutableArray<string> Of(Scope scope, SwitchSyntax syntax, BindingReporter report)
    {
        var usual = Usual(scope, syntax, report);
        if (syntax.Clauses.FirstOrDefault(c => c.Keyword == Keyword) is not { } clause) return usual;
        ImmutableArray<string> stated = [.. clause.All<ContactSyntax>().Where(c => c.Part is null && c.To is null).Select(c => c.From.Text)];
        if (stated.Length == usual.Length && stated.Distinct(StringComparer.Ordinal).Count() == stated.Length) return stated;
        report.CountMismatch(
            scope.At(clause.Span), $"`{syntax.First.Text}` has {usual.Length} terminals.",
            $"Give a name for each of {string.Join(", ", usual)}, in this order: terminals {string.Join(' ', usual)}.");
        return usual;
    }

    private static ImmutableArray<string> Usual(Scope scope, SwitchSyntax syntax, BindingReporter report)
    {
        var isReed = syntax.Keyword.Text == "reed";
        if (syntax.Form.Text is "make" or "break") return isReed ? ["1", "2"] : ["COM", syntax.Form.Text == "make" ? "NO" : "NC"];
        if (syntax.Form.Text == "rotary")
        {
            report.Contradiction(
                scope.At(syntax.Form.Span), $"A {syntax.Keyword.Text} is a make, a break or a changeover.", "Write `pole` for a rotary one.",
                scope.At(syntax.Keyword.Span));
        }

        return ["COM", "NO", "NC"];
    }
}
