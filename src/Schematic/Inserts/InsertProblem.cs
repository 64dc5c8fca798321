namespace Schematic.Inserts;

/// <summary>Something wrong with an insert as described; whoever asked for the insert knows where it was written.</summary>
/// <param name="Message">One sentence: what was found.</param>
/// <param name="Help">One sentence: what to do.</param>
public sealed record InsertProblem(string Message, string Help)
{
    /// <summary>Whether the insert can be drawn all the same.</summary>
    public bool IsWarning { get; init; }
}
