namespace Schematic.Model;

/// <summary>
/// The screw holes of a connector's flange: four at the corners of a rectangle around the insert's centre, or two side by side.
/// </summary>
/// <param name="Count">Two or four.</param>
/// <param name="HoleMm">Diameter of each hole in millimetres.</param>
/// <param name="SpacingXMm">Distance of the holes across, key up, in millimetres.</param>
/// <param name="SpacingYMm">Distance of the holes up and down in millimetres; zero for two holes.</param>
public sealed record FlangeHoles(int Count, double HoleMm, double SpacingXMm, double SpacingYMm);
