using Schematic.Model;

namespace Schematic.Analysis.Quantities;

/// <summary>What a wire has to do, for choosing its size.</summary>
/// <param name="LengthMm">The length that the drop is counted over, the return included where it counts.</param>
/// <param name="Amps">Highest steady current.</param>
/// <param name="AllowedDropVolts">What the drop may be over that length.</param>
/// <param name="Limits">Temperatures.</param>
/// <param name="BundledWires">How many loaded wires lie together, this one counted.</param>
public sealed record WireRun(double LengthMm, double Amps, double AllowedDropVolts, DesignLimits Limits, int BundledWires);
