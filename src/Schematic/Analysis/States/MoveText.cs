using System.Collections.Immutable;
using Schematic.Diagnostics;

namespace Schematic.Analysis.States;

/// <summary>Tells moves and states as steps of a trace.</summary>
public static class MoveText
{
    /// <summary>
    /// A sequence of moves, a step each. An actuator moved on through positions where it stays is one step: a hand passes them
    /// on the way. No moves are the state of rest.
    /// </summary>
    public static ImmutableArray<TraceStep> Steps(StateVariables variables, ImmutableArray<Move> moves)
    {
        if (moves.IsEmpty) return [new StateStep([])];
        var steps = ImmutableArray.CreateBuilder<TraceStep>();
        for (var i = 0; i < moves.Length; i++)
        {
            if (i + 1 < moves.Length && PassesOn(moves[i], moves[i + 1])) continue;
            var variable = variables.All[moves[i].Variable];
            steps.Add(new MoveStep(variable.IsPushToTurn && moves[i].Kind != MoveKind.LetGo ? MoveAction.PushAndTurn : ActionOf(moves[i].Kind), variable.Name, variable.Values[moves[i].To]));
        }

        return steps.ToImmutable();
    }

    /// <summary>A moment: <c>while KNOB moves from a to b</c>, <c>while K1 changes from released to operated</c>.</summary>
    public static TraceStep Passing(StateVariables variables, Move move)
    {
        var variable = variables.All[move.Variable];
        var isRelay = variable.Kind == StateVariableKind.Coil;
        return new FactStep($"while {variable.Name} {(isRelay ? "changes" : "moves")} from {variable.Values[move.From]} to {variable.Values[move.To]}")
        {
            Subjects = [isRelay ? About.Part(variable.Name) : About.Actuator(variable.Name)],
        };
    }

    /// <summary>A state: the actuators and supplies that are not at rest, the coils that are operated, and how all that varies stands.</summary>
    public static StateStep Describe(StateVariables variables, PanelState state) => new(
    [
        .. variables.All
            .Select((v, i) => (Variable: v, Value: state.Values[i]))
            .Where(p => (p.Value != p.Variable.Rest && p.Value < p.Variable.Values.Length && p.Variable.Kind != StateVariableKind.Unknown) || p.Variable.IsOfPartThatVaries)
            .Select(p => new StandingThing(p.Variable.Name, p.Variable.Values[p.Value])),
    ]);

    private static bool PassesOn(Move move, Move next) =>
        move.Variable == next.Variable && move.Kind == MoveKind.Move && next.Kind != MoveKind.LetGo && move.From != next.To;

    private static MoveAction ActionOf(MoveKind kind) => kind switch
    {
        MoveKind.Hold => MoveAction.Hold,
        MoveKind.LetGo => MoveAction.LetGo,
        MoveKind.Switch => MoveAction.Switch,
        MoveKind.Wait => MoveAction.Wait,
        MoveKind.Vary => MoveAction.Vary,
        _ => MoveAction.Move,
    };
}
