namespace Schematic.Model;

/// <summary>What a switching contact may carry: volts and resistive amperes, direct current.</summary>
public sealed record ContactRating(double? Volts, double Amps);
