using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>Which terminals of a part must be connected together for it to work.</summary>
public static class PartTerminals
{
    /// <summary>The two ends of a device that has two, supplies excepted; else nothing.</summary>
    public static IEnumerable<(string From, string To)> EndsOf(Part part) => part switch
    {
        Lamp or Solenoid or Led or Diode or Resistor or Fuse or Breaker when part.Terminals.Length == 2 =>
            [(part.Terminals[0].Name, part.Terminals[1].Name)],
        _ => [],
    };

    /// <summary>The ends of a relay's coil.</summary>
    public static IEnumerable<(string From, string To)> CoilOf(Relay relay)
    {
        var contacts = relay.Poles.SelectMany(p => p.Pole.Throws.Select(t => t.Terminal).Append(p.Pole.Common))
            .ToHashSet(StringComparer.Ordinal);
        var coil = relay.Terminals.Select(t => t.Name).Where(n => !contacts.Contains(n)).ToList();
        return coil.Count == 2 ? [(coil[0], coil[1])] : [];
    }
}
