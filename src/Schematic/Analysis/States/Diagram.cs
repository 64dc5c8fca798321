namespace Schematic.Analysis.States;

/// <summary>
/// A condition over the state variables: a node of a <see cref="DiagramStore"/>. Equal conditions are the same node, so
/// comparing two conditions costs nothing.
/// </summary>
public readonly record struct Diagram
{
    internal Diagram(int id) => Id = id;

    /// <summary>The condition that never holds.</summary>
    public static Diagram Never => new(0);

    /// <summary>The condition that always holds.</summary>
    public static Diagram Always => new(1);

    /// <summary>Whether it never holds.</summary>
    public bool IsNever => Id == 0;

    /// <summary>Whether it always holds.</summary>
    public bool IsAlways => Id == 1;

    internal int Id { get; }
}
