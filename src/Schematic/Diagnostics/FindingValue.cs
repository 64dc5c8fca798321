namespace Schematic.Diagnostics;

/// <summary>A figure of a finding.</summary>
/// <param name="Name">What it is in a word or two, such as <c>gets</c> or <c>limit</c>.</param>
/// <param name="Value">How much.</param>
/// <param name="Unit">Its unit: <c>V</c>, <c>A</c>, <c>ohm</c>, <c>W</c>; <c>1</c> for a count.</param>
public sealed record FindingValue(string Name, double Value, string Unit);
