namespace Schematic.Analysis.Quantities;

/// <summary>A fuse or breaker rating found for a circuit.</summary>
/// <param name="Amps">The rating, or null when none both carries the load and protects the wire.</param>
/// <param name="LeastAmps">The load asks for at least this rating.</param>
/// <param name="MostAmps">The thinnest wire allows at most this rating.</param>
/// <param name="Method">Steps and sources, to be printed.</param>
public sealed record ProtectorChoice(double? Amps, double LeastAmps, double MostAmps, string Method);
