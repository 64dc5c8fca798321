using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>A statement that declares a device, with what every binder of devices needs to read it.</summary>
internal sealed class DeviceStatement(Scope scope, PartSyntax syntax, NameRanges ranges, BindingReporter report)
{
    public Scope Scope => scope;

    public PartSyntax Syntax => syntax;

    public BindingReporter Report => report;

    /// <summary>The clauses before the block.</summary>
    public ClauseReader Reader { get; } = new(syntax.Clauses, scope, report);

    /// <summary>Where the designator stands.</summary>
    public SourceSpan Span { get; } = scope.At(syntax.Designator.Span);

    /// <summary>The designator as the whole panel knows it.</summary>
    public string Name { get; } = scope.Full(syntax.Designator.Text);

    /// <summary>The designator as it is written.</summary>
    public string ShownName => syntax.Designator.Text;

    /// <summary>The values that stand for themselves, one for each dimension.</summary>
    public Dictionary<Dimension, QuantitySyntax> Ratings(string example, params IReadOnlyCollection<Dimension> dimensions) =>
        Reader.Ratings(example, dimensions);

    /// <summary>A rating where it is stated and above zero, or null.</summary>
    public static double? Stated(IReadOnlyDictionary<Dimension, QuantitySyntax> ratings, Dimension dimension) =>
        ratings.TryGetValue(dimension, out var quantity) && quantity.Value > 0 ? quantity.Value : null;

    /// <summary>A rating that the device cannot do without; zero, after a finding, where it is missing.</summary>
    public double Need(Dictionary<Dimension, QuantitySyntax> ratings, Dimension dimension, string example)
    {
        if (ratings.TryGetValue(dimension, out var quantity)) return quantity.Value;
        if (!syntax.HasErrors && IsFreeOfWrongUnits(ratings))
            report.MissingValue(Span, $"`{ShownName}` has no rated {UnitWords.Kind(dimension)[2..]}.", $"Add it, such as {example}.");
        return 0;
    }

    /// <summary>The part with terminals of these names.</summary>
    public static T WithTerminals<T>(T part, params ReadOnlySpan<string> terminalNames) where T : Part
    {
        var list = ImmutableArray.CreateBuilder<Terminal>(terminalNames.Length);
        foreach (var name in terminalNames) list.Add(new Terminal(name, part.Span));
        return part with { Terminals = list.MoveToImmutable() };
    }

    /// <summary>The names of its own terminals that a clause lists, ranges counted out.</summary>
    public IEnumerable<(string Name, SourceSpan Span)> NamesOf(ClauseSyntax clause)
    {
        foreach (var item in clause.All<ContactSyntax>())
        {
            if (item.IsNotTraced)
            {
                report.UnknownHere(scope.At(item.Span));
                continue;
            }

            if (item.Part is not null)
            {
                report.WrongKind(scope.At(item.Span), item.Part.Text, "another part", "one of its own terminals", Span);
                continue;
            }

            foreach (var name in ranges.Expand(item.From, item.To, scope)) yield return (name, scope.At(item.Span));
        }
    }

    /// <summary>Reports names that are listed twice.</summary>
    public void CheckTwice(IEnumerable<(string Name, SourceSpan Span)> all)
    {
        var first = new Dictionary<string, SourceSpan>(StringComparer.Ordinal);
        foreach (var (name, span) in all)
        {
            if (!first.TryAdd(name, span)) report.DuplicateName(span, name, first[name]);
        }
    }

    /// <summary>Whether every rating was understood: a wrong unit is reported by itself and not as missing as well.</summary>
    private bool IsFreeOfWrongUnits(Dictionary<Dimension, QuantitySyntax> ratings) =>
        syntax.Clauses.Where(c => c.Keyword.Length == 0).SelectMany(c => c.All<QuantitySyntax>()).All(q => ratings.ContainsKey(q.Dimension));
}
