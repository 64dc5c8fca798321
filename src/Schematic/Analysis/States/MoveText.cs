using System.Collections.Immutable;

namespace Schematic.Analysis.States;

/// <summary>Puts moves and states into words.</summary>
public static class MoveText
{
    /// <summary>
    /// A sequence of moves, a line each. An actuator moved on through positions where it stays is one line: a hand passes them
    /// on the way.
    /// </summary>
    public static ImmutableArray<string> Lines(StateVariables variables, ImmutableArray<Move> moves)
    {
        if (moves.IsEmpty) return ["at rest"];
        var lines = ImmutableArray.CreateBuilder<string>();
        for (var i = 0; i < moves.Length; i++)
        {
            if (i + 1 < moves.Length && PassesOn(moves[i], moves[i + 1])) continue;
            lines.Add(Line(variables.All[moves[i].Variable], moves[i]));
        }

        return lines.ToImmutable();
    }

    /// <summary>A state in words, actuators and supplies that are not at rest and coils that are operated: <c>LEVER reverse, K1 operated</c>.</summary>
    public static string Describe(StateVariables variables, PanelState state)
    {
        var parts = variables.All
            .Select((v, i) => (Variable: v, Value: state.Values[i]))
            .Where(p => p.Value != p.Variable.Rest)
            .Select(p => $"{p.Variable.Name} {p.Variable.Values[p.Value]}");
        var text = string.Join(", ", parts);
        return text.Length == 0 ? "everything at rest" : text;
    }

    private static bool PassesOn(Move move, Move next) =>
        move.Variable == next.Variable && move.Kind == MoveKind.Move && next.Kind != MoveKind.LetGo && move.From != next.To;

    private static string Line(StateVariable variable, Move move)
    {
        var target = variable.Values[move.To];
        return move.Kind switch
        {
            MoveKind.Hold => $"hold {variable.Name} at {target}",
            MoveKind.LetGo => $"let {variable.Name} go: it springs to {target}",
            MoveKind.Switch => $"switch {variable.Name} {target}",
            _ => $"move {variable.Name} to {target}",
        };
    }
}
