using System.Collections.Immutable;

namespace Schematic.Analysis.States;

/// <summary>One thing that can stand in several ways.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">The actuator's name or the part's designator.</param>
/// <param name="Values">What its values are called, by number.</param>
/// <param name="Rest">The value before anybody touches anything.</param>
public sealed record StateVariable(StateVariableKind Kind, string Name, ImmutableArray<string> Values, int Rest)
{
    /// <summary>Of an actuator the moments between positions that matter; each has a value behind those of the positions.</summary>
    public ImmutableArray<Passing> Passings { get; init; } = [];

    /// <summary>Whether it is how a part stands that varies, known to change or not.</summary>
    public bool IsOfPartThatVaries { get; init; }

    /// <summary>Whether it is an actuator that is pushed to be turned.</summary>
    public bool IsPushToTurn { get; init; }

    /// <summary>How many values the variable has, moments included.</summary>
    public int Size => Values.Length + Passings.Length;
}
