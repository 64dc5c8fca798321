namespace Schematic.Language;

/// <summary>Which one of several like things a statement is, where one statement was written for them all: <c>W1..W10</c>.</summary>
/// <param name="Index">Its number, from zero.</param>
/// <param name="Count">How many there are; zero or one where it stands alone.</param>
public readonly record struct RunPlace(int Index, int Count)
{
    /// <summary>Whether the statement was written for this thing alone.</summary>
    public bool IsAlone => Count <= 1;
}
