namespace Schematic.Model;

/// <summary>The hole that a connector needs in a panel, in millimetres; the shell's own drawing is its source.</summary>
/// <param name="WidthMm">Width of the hole, key up; the diameter of a round one.</param>
/// <param name="HeightMm">Height of the hole, key up; the diameter of a round one.</param>
/// <param name="IsRound">Whether it is round.</param>
public sealed record PanelCutout(double WidthMm, double HeightMm, bool IsRound);
