using Schematic.Language;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>Builds locks and the statements that are to be proved.</summary>
internal sealed class ProofBinder(
    NameTable names, BindingReporter report, TerminalBinder terminals, ConditionBinder conditions)
{
    public ActuatorLock? Lock(Scope scope, LockSyntax syntax)
    {
        var span = scope.At(syntax.Keyword.Span);
        var actuator = names.ResolveActuator(scope, syntax.Actuator);
        var unless = conditions.Bind(scope, syntax.Unless, span);
        if (actuator is null) return null;
        var positions = conditions.Positions(scope, actuator, syntax.Actuator.Text, syntax.Positions);
        return unless is null || positions.IsEmpty ? null : new ActuatorLock(actuator.FullName, positions, unless, span);
    }

    public Expectation? Expect(Scope scope, ExpectSyntax syntax)
    {
        var span = scope.At(syntax.Span);
        var when = conditions.Bind(scope, syntax.When, span);
        return Claimed(scope, syntax, when, span) is { } claim ? claim with { IsInPassing = syntax.IsInPassing } : null;
    }

    private Expectation? Claimed(Scope scope, ExpectSyntax syntax, Condition? when, SourceSpan span)
    {
        if (syntax.Part is not null) return Energised(scope, syntax, when);
        var terminal = terminals.One(scope, syntax.Terminal);
        var other = terminals.One(scope, syntax.To);
        if (syntax.State.Text is "low" or "high") return Level(scope, syntax, terminal, when);
        return terminal is null || other is null || when is null
            ? null
            : new ContinuityExpectation(terminal.Value, other.Value, syntax.State.Text == "closed", when, span);
    }

    public Expectation? Never(Scope scope, NeverSyntax syntax)
    {
        var span = scope.At(syntax.Span);
        var sources = terminals.BindAll(scope, syntax.Sources);
        var targets = terminals.BindAll(scope, syntax.Targets);
        var when = conditions.Bind(scope, syntax.When, span);
        return sources.IsEmpty || targets.IsEmpty || when is null ? null : new NeverExpectation(sources, targets, when, span);
    }

    private EnergisedExpectation? Energised(Scope scope, ExpectSyntax syntax, Condition? when)
    {
        var load = names.Resolve(
            scope, syntax.Part!, "a lamp, an LED, a relay or a solenoid",
            d => d.Kind == DeclaredKind.Part && ConditionBinder.IsLoad(d.Part));
        return load is null || when is null
            ? null
            : new EnergisedExpectation(load.FullName, syntax.State.Text == "energised", when, scope.At(syntax.Span));
    }

    private LevelExpectation? Level(Scope scope, ExpectSyntax syntax, TerminalId? terminal, Condition? when)
    {
        if (terminal is null) return null;
        var part = names.Find(scope, syntax.Terminal!.Part!.Text)!;
        var isInput = part.Part is Board board && board.Inputs.Any(i => i.Terminal == terminal.Value.Name);
        if (!isInput && !part.IsIncomplete)
        {
            report.WrongKind(
                scope.At(syntax.Terminal.Span), terminal.Value.ToString(), "not an input", "an input of a board", part.Span);
        }

        return isInput && when is not null
            ? new LevelExpectation(terminal.Value, syntax.State.Text == "low" ? InputLevel.Low : InputLevel.High, when, scope.At(syntax.Span))
            : null;
    }
}
