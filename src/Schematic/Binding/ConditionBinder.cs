using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>Turns conditions as written into conditions on actuators, coils and supplies.</summary>
internal sealed class ConditionBinder(NameTable names, BindingReporter report)
{
    /// <summary>A condition; null, after a finding, when a name in it is not known. Without a condition: always.</summary>
    public Condition? Bind(Scope scope, ConditionSyntax? syntax, SourceSpan statement) => syntax switch
    {
        null => new AllCondition([], statement),
        JoinedConditionSyntax joined => Join(scope, joined, statement),
        StateConditionSyntax state => State(scope, state),
        _ => throw new InvalidOperationException("A kind of condition without binding."),
    };

    /// <summary>
    /// The positions that an actuator has of those named; one that it does not have is reported, unless the actuator itself
    /// could not be read.
    /// </summary>
    public ImmutableArray<string> Positions(Scope scope, Declared actuator, string shownName, IEnumerable<WordSyntax> words)
    {
        var known = actuator.Actuator?.Positions.Select(p => p.Name).ToList() ?? [];
        var found = ImmutableArray.CreateBuilder<string>();
        foreach (var word in words)
        {
            if (known.Contains(word.Text)) found.Add(word.Text);
            else if (!actuator.IsIncomplete) report.UnknownPosition(scope.At(word.Span), shownName, word.Text, known, actuator.Span);
        }

        return found.DrainToImmutable();
    }

    private Condition? Join(Scope scope, JoinedConditionSyntax joined, SourceSpan statement)
    {
        var parts = joined.Parts.Select(p => Bind(scope, p, statement)).ToList();
        if (parts.Contains(null)) return null;
        ImmutableArray<Condition> all = [.. parts.Select(p => p!)];
        return joined.AllHold ? new AllCondition(all, scope.At(joined.Span)) : new AnyCondition(all, scope.At(joined.Span));
    }

    private Condition? State(Scope scope, StateConditionSyntax state)
    {
        var subject = names.Resolve(
            scope, state.Subject, "an actuator, a load or a supply",
            d => d.Kind == DeclaredKind.Actuator || (d.Kind == DeclaredKind.Part && (d.IsIncomplete || IsLoad(d.Part) || d.Part is Supply)));
        if (subject is null || (subject.Kind != DeclaredKind.Actuator && subject.Part is null)) return null;
        var span = scope.At(state.Span);
        if (subject.Kind == DeclaredKind.Actuator)
        {
            var positions = Positions(scope, subject, state.Subject.Text, state.States);
            return positions.Length == state.States.Length ? new PositionCondition(subject.FullName, positions, span) : null;
        }

        if (subject.Part is Relay { HasDelay: true } && state.States is [{ Text: DelayedCondition.OperatedWord or DelayedCondition.ReleasedWord } delayed])
            return new DelayedCondition(subject.FullName, delayed.Text == DelayedCondition.OperatedWord, span);
        return subject.Part is Supply
            ? OneOfTwo(scope, state, subject, "on", "off") is { } on ? new SupplyCondition(subject.FullName, on, span) : null
            : OneOfTwo(scope, state, subject, "energised", "released") is { } energised
                ? new EnergisedCondition(subject.FullName, energised, span)
                : null;
    }

    /// <summary>Whether a part is something that can be energised.</summary>
    public static bool IsLoad(Part? part) => part is { IsLoad: true };

    private bool? OneOfTwo(Scope scope, StateConditionSyntax state, Declared subject, string yes, string no)
    {
        if (state.States is [var only] && (only.Text == yes || only.Text == no)) return only.Text == yes;
        var wrong = state.States.FirstOrDefault(s => s.Text != yes && s.Text != no) ?? state.States[1];
        report.UnknownState(
            scope.At(wrong.Span), state.Subject.Text, subject.Article,
            subject.Part is Relay { HasDelay: true } ? $"{yes}, {no}, {DelayedCondition.OperatedWord} or {DelayedCondition.ReleasedWord}" : $"{yes} or {no}");
        return null;
    }
}
