using System.Collections.Immutable;
using Schematic.Language;

namespace Schematic.Binding;

/// <summary>
/// The outputs of a coded wheel and the positions that close each: by a pattern with a digit for each position, or by a line for each
/// position with the outputs that it closes.
/// </summary>
internal sealed class CodedRows(Scope scope, SwitchSyntax syntax, BindingReporter report, ConditionBinder conditions)
{
    private const string CommonName = "common";

    /// <summary>The row of the common, or null after a finding.</summary>
    public PoleRowSyntax? Common()
    {
        var commons = syntax.Rows.Where(IsCommon).ToList();
        foreach (var second in commons.Skip(1)) report.StatedTwice(scope.At(second.Span), "the common", scope.At(commons[0].Span));
        if (commons.Count == 0 && !syntax.HasErrors)
            report.MissingValue(scope.At(syntax.First.Span), $"`{syntax.First.Text}` has no row named common.", "Add it: common J1:4.");
        return commons.FirstOrDefault();
    }

    /// <summary>The rows of its outputs.</summary>
    public ImmutableArray<PoleRowSyntax> Outputs()
    {
        var outputs = syntax.Rows.Where(r => !r.IsPosition && !IsCommon(r)).ToImmutableArray();
        foreach (var twice in outputs.GroupBy(r => r.Names[0].Text, StringComparer.Ordinal).Where(g => g.Count() > 1))
            report.StatedTwice(scope.At(twice.Last().Span), $"the output `{twice.Key}`", scope.At(twice.First().Span));
        if (outputs.IsEmpty && !syntax.HasErrors)
            report.MissingValue(scope.At(syntax.First.Span), $"`{syntax.First.Text}` has no outputs.", "Give a row for each, with a digit for each position: 1 \"0101\" J1:2.");
        return [.. outputs.DistinctBy(r => r.Names[0].Text)];
    }

    /// <summary>For each output the positions that close it.</summary>
    public ImmutableArray<ImmutableArray<string>> Closed(ImmutableArray<PoleRowSyntax> outputs, Declared? actuator)
    {
        ImmutableArray<string> positions = [.. actuator?.Actuator?.Positions.Select(p => p.Name) ?? []];
        var byPosition = actuator is null ? [] : ByPosition(outputs, actuator);
        return [.. outputs.Select(o => o.Pattern is null ? ByLines(o, byPosition) : ByPattern(o, positions, byPosition.Count > 0))];
    }

    private static bool IsCommon(PoleRowSyntax row) => row is { IsPosition: false, Pattern: null, Names: [{ Text: CommonName }] };

    private List<(string Position, PoleRowSyntax Row)> ByPosition(ImmutableArray<PoleRowSyntax> outputs, Declared actuator)
    {
        var found = new List<(string, PoleRowSyntax)>();
        var first = new Dictionary<string, PoleRowSyntax>(StringComparer.Ordinal);
        foreach (var row in syntax.Rows.Where(r => r.IsPosition))
        {
            foreach (var strange in row.Names.Skip(1).Where(n => outputs.All(o => o.Names[0].Text != n.Text)))
                report.UnknownContact(scope.At(strange.Span), syntax.First.Text, [strange.Text], [.. outputs.Select(o => o.Names[0].Text)], scope.At(syntax.First.Span));
            if (!first.TryAdd(row.Names[0].Text, row))
                report.StatedTwice(scope.At(row.Span), $"the position `{row.Names[0].Text}`", scope.At(first[row.Names[0].Text].Span));
            foreach (var position in conditions.Positions(scope, actuator, syntax.Actuator.Text, [row.Names[0]])) found.Add((position, row));
        }

        return found;
    }

    private ImmutableArray<string> ByLines(PoleRowSyntax output, List<(string Position, PoleRowSyntax Row)> lines)
    {
        if (lines.Count == 0 && !syntax.HasErrors)
        {
            report.MissingValue(
                scope.At(output.Span), $"Nothing says in which positions `{output.Names[0].Text}` is closed.",
                "Give it a digit for each position, 1 where it is closed, or a line for each position: at 3 1 2.");
        }

        return [.. lines.Where(l => l.Row.Names.Skip(1).Any(n => n.Text == output.Names[0].Text)).Select(l => l.Position).Distinct()];
    }

    private ImmutableArray<string> ByPattern(PoleRowSyntax output, ImmutableArray<string> positions, bool hasLines)
    {
        var span = scope.At(output.Pattern!.Span);
        if (hasLines)
        {
            report.Contradiction(
                span, $"`{output.Names[0].Text}` has a pattern, and lines say what each position closes.", "Keep one of the two.",
                scope.At(syntax.Rows.First(r => r.IsPosition).Span));
        }

        var digits = output.Pattern.Text.Where(c => c != ' ').ToArray();
        if (digits.Any(d => d is not ('0' or '1')))
            report.OutOfRange(span, $"A pattern consists of 0 and 1; here is `{digits.First(d => d is not ('0' or '1'))}`.", "Write 1 for a position in which it is closed; blanks may stand between.");
        else if (digits.Length != positions.Length && !positions.IsEmpty)
            report.CountMismatch(span, $"The pattern has {digits.Length} digits for {positions.Length} positions of `{syntax.Actuator.Text}`.", "Give a digit for each, in their order.");
        return [.. positions.Where((_, i) => i < digits.Length && digits[i] == '1')];
    }
}
