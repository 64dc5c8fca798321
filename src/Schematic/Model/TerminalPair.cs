namespace Schematic.Model;

/// <summary>Two of a part's own terminals, by name.</summary>
public readonly record struct TerminalPair(string From, string To);
