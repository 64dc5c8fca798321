namespace Schematic.Analysis.Quantities;

/// <summary>The current that a wire may carry for good, and how it was found.</summary>
/// <param name="Amps">Amperes.</param>
/// <param name="Method">The steps and sources in one sentence, to be printed.</param>
public sealed record WireCapacity(double Amps, string Method);
