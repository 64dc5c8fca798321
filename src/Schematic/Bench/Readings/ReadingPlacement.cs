namespace Schematic.Bench.Readings;

/// <summary>Finds the placement on the bench that a noted reading was taken at.</summary>
public static class ReadingPlacement
{
    /// <summary>
    /// The placement, or null when a contact of it is not on the bench or nothing is expected there. Actuators that move nothing
    /// there do not count.
    /// </summary>
    public static Placement? Of(BenchCircuit circuit, NotedReading reading)
    {
        var stand = Stand.Rest(circuit.Actuators);
        for (var i = 0; i < circuit.Actuators.Length; i++)
        {
            foreach (var held in reading.Held)
                if (held.Actuator == circuit.Actuators[i].Name) stand = stand.With(i, held.Place);
        }

        var red = reading.Red.Select(circuit.NumberOf).ToList();
        var black = reading.Black.Select(circuit.NumberOf).ToList();
        return red.Concat(black).Any(t => !circuit.Accessible.Contains(t)) ? null : new Placement(stand, reading.Test, [.. red], [.. black]);
    }
}
