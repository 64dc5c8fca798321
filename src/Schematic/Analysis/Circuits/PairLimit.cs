using Schematic.Model;

namespace Schematic.Analysis.Circuits;

/// <summary>The voltage that two terminals stand, where no current between them gives it: of a capacitor, of a general device.</summary>
/// <param name="Part">The part.</param>
/// <param name="From">One terminal: of a polarised capacitor its plus.</param>
/// <param name="To">The other.</param>
/// <param name="Volts">The highest voltage, or null when it is not known.</param>
/// <param name="IsPolarised">Whether the first must not lie below the second.</param>
public sealed record PairLimit(Part Part, TerminalId From, TerminalId To, double? Volts, bool IsPolarised)
{
    /// <summary>The limits of a panel in the order of its parts.</summary>
    public static IEnumerable<PairLimit> Of(Panel panel)
    {
        foreach (var part in panel.Parts)
        {
            if (part is Capacitor capacitor && (capacitor.MaxVolts is not null || capacitor.IsPolarised))
                yield return new PairLimit(part, part.At(capacitor.Ends.From), part.At(capacitor.Ends.To), capacitor.MaxVolts, capacitor.IsPolarised);
            if (part is not Device device) continue;
            foreach (var limit in device.Limits.Where(l => l.Volts is not null))
                yield return new PairLimit(part, part.At(limit.Ends.From), part.At(limit.Ends.To), limit.Volts, false);
        }
    }
}
