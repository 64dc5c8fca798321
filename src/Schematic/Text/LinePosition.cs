namespace Schematic.Text;

/// <summary>A place in a text as a person counts it: line and column both start at one.</summary>
public readonly record struct LinePosition(int Line, int Column);
