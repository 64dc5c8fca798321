using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>What a semiconductor stands at worst.</summary>
/// <param name="Part">A transistor, an optocoupler or a bridge rectifier.</param>
/// <param name="Amps">Most current through it.</param>
/// <param name="Forward">Highest voltage from collector to emitter; of a rectifier between its alternating terminals, as a peak.</param>
/// <param name="Backward">Highest voltage from emitter to collector.</param>
public sealed record OutputLoad(Part Part, Extreme Amps, Extreme Forward, Extreme Backward);
