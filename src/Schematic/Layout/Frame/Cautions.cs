using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Layout.Frame;

/// <summary>
/// Chooses the cautions that a panel's sheets carry, from what is in the panel. The user's own follow them. They guide drawing
/// and bench work and permit nothing.
/// </summary>
public static class Cautions
{
    /// <summary>
    /// Direct voltage above which bare live parts are no longer safe to touch in the dry, in volts
    /// (IEC 60364-4-41, extra-low voltage without basic protection, from memory).
    /// </summary>
    public const double TouchVoltsDirect = 60;

    /// <summary>The same for alternating voltage, root mean square (same source, from memory).</summary>
    public const double TouchVoltsAlternating = 25;

    private const int NamesShown = 3;

    /// <summary>The cautions, one sentence or two each, the most general first.</summary>
    public static ImmutableArray<string> For(Panel panel)
    {
        var texts = ImmutableArray.CreateBuilder<string>();
        texts.Add("Not for use in service: local codes and licensed practice decide.");
        texts.Add("Switch off and prove dead before you touch; prove every joint with a meter before you switch on.");
        var dangerous = panel.Parts.OfType<Supply>().Where(IsDangerous).ToList();
        if (dangerous.Count > 0)
        {
            texts.Add($"{Names(dangerous)} {(dangerous.Count == 1 ? "gives" : "give")} a voltage that can kill "
                + "(above 60 V DC or 25 V AC): cover live parts, never work on them alone.");
        }

        var coils = panel.Parts.Where(p => p is Relay or Solenoid).ToList();
        if (coils.Count > 0)
        {
            texts.Add($"{(coils.Count == 1 ? "Coil" : "Coils")} {Names(coils)}: switching off gives a high voltage. "
                + "Fit the suppression diode with its cathode to plus.");
        }

        if (panel.Attachments.Length > 0 || panel.Parts.Any(p => p.OnHand))
        {
            texts.Add("Salvaged equipment may hold cadmium plating, asbestos sleeves, radium paint: do not file, heat or open it.");
        }

        return texts.Concat(panel.Cautions).ToImmutableArray();
    }

    private static bool IsDangerous(Supply supply) =>
        supply.MaxVolts > (supply.IsAlternating ? TouchVoltsAlternating : TouchVoltsDirect);

    private static string Names(IReadOnlyCollection<Part> parts)
    {
        var names = parts.Select(p => p.Designator).Order(NaturalOrder.Comparer).Take(NamesShown);
        var list = string.Join(", ", names);
        return parts.Count > NamesShown ? $"{list} and {parts.Count - NamesShown} more" : list;
    }
}
