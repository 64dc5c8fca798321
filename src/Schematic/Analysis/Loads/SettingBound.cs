namespace Schematic.Analysis.Loads;

/// <summary>A limit on a supply's setting.</summary>
/// <param name="Volts">The setting.</param>
/// <param name="Reason">What sets the limit, in words.</param>
public sealed record SettingBound(double Volts, string Reason);
