namespace Schematic.Inserts;

/// <summary>Something about an arrangement that the file does not state and the program chose.</summary>
/// <param name="Word">The word of the language that would state it, such as <c>start</c>.</param>
/// <param name="What">What was assumed, in a few words.</param>
public sealed record InsertAssumption(string Word, string What);
