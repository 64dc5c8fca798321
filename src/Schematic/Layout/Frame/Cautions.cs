using System.Collections.Immutable;
using Schematic.Analysis.Quantities;
using Schematic.Model;

namespace Schematic.Layout.Frame;

/// <summary>
/// Chooses the cautions that a panel's sheets carry, from what is in the panel. The user's own follow them. They guide drawing
/// and bench work and permit nothing.
/// </summary>
public static class Cautions
{
    private const int NamesShown = 3;

    private static readonly ImmutableArray<string> General =
    [
        "Not for use in service: local codes and licensed practice decide.",
        "Switch off and prove dead before you touch; prove every joint with a meter before you switch on.",
    ];

    /// <summary>How many of the first are on every drawing, whatever room they take: the general ones and what may kill.</summary>
    public static int Urgent(Panel panel) => General.Length + OfWords(panel).Count() + OfVoltages(panel).Count();

    /// <summary>The cautions, one sentence or two each, the most general first.</summary>
    public static ImmutableArray<string> For(Panel panel)
    {
        var texts = ImmutableArray.CreateBuilder<string>();
        texts.AddRange(General);
        texts.AddRange(OfWords(panel));
        texts.AddRange(OfVoltages(panel));

        if (Mains(panel) is { Count: > 0 } mains)
        {
            texts.Add($"{Names(mains)}: give it an earthed case or double insulation, a fuse in the primary and a cover over its terminals; "
                + "it must keep the windings apart (IEC 61558, from memory).");
        }

        var coils = panel.Parts.Where(p => p.Winding is not null).ToList();
        if (coils.Count > 0)
        {
            texts.Add($"{(coils.Count == 1 ? "Coil" : "Coils")} {Names(coils)}: switching off gives a high voltage. "
                + "A suppression diode lies with its cathode to plus.");
        }

        var charged = panel.Parts.OfType<Capacitor>().ToList();
        if (charged.Count > 0)
        {
            texts.Add($"{(charged.Count == 1 ? "Capacitor" : "Capacitors")} {Names(charged)}: {(charged.Count == 1 ? "holds" : "hold")} a charge after switching off. "
                + "Discharge through a resistor and prove dead before you touch."
                + (charged.Exists(c => c.IsPolarised) ? " A polarised one bursts when it lies the wrong way round." : ""));
        }

        if (panel.Attachments.Length > 0 || panel.Parts.Any(p => p.OnHand))
        {
            texts.Add("Salvaged equipment may hold cadmium plating, asbestos sleeves, radium paint: do not file, heat or open it.");
        }

        if (panel.Wires.Any(w => w.IsGaugeChosen))
            texts.Add($"{ValueText.AssumedMark} before a figure: assumed by the program, not stated in the file; check it before you rely on it.");
        if (panel.Parts.Any(p => p.Winding is { Reckoned: not Reckoned.None } || p is Lamp { Reckoned: not Reckoned.None } or Consumer { Reckoned: not Reckoned.None }))
            texts.Add($"{ValueText.ReckonedMark} before a figure: reckoned from two others that the file states.");
        return texts.Concat(panel.Cautions).ToImmutableArray();
    }

    private static IEnumerable<string> OfWords(Panel panel)
    {
        if (DangerWords.Cartridge(panel) is { } cartridge)
        {
            yield return $"\"{cartridge}\": such circuits can fire cartridges or flood a room. Have them made safe by trained people "
                + "first; put no meter and no current on a cartridge.";
        }

        if (DangerWords.Aircraft(panel) is { } aircraft)
            yield return $"\"{aircraft}\": what is built from this drawing is not airworthy and must not fly.";
        if (DangerWords.Power(panel) is { } power)
            yield return $"\"{power}\": power circuits may share the case. Have them disconnected and locked off first.";
    }

    private static IEnumerable<string> OfVoltages(Panel panel)
    {
        var supplies = panel.Parts.OfType<Supply>().Concat(panel.Parts.OfType<Transformer>().Select(t => t.AsSupply with { MaxVolts = t.SecondaryVolts })).ToList();
        foreach (var transformer in Mains(panel))
        {
            yield return $"{transformer.Designator}: its primary carries {ValueText.Volts(transformer.PrimaryVolts)}, mains that kill: work for licensed people only.";
        }

        var dangerous = supplies.FindAll(s => s.MaxVolts > ExtraLowVoltage.TouchVolts(s.IsAlternating));
        if (dangerous.Count > 0)
        {
            yield return $"{Names(dangerous)} {(dangerous.Count == 1 ? "gives" : "give")} a voltage that can kill "
                + "(above 60 V DC or 25 V AC): cover live parts, never work on them alone.";
        }

        var beyond = supplies.FindAll(s => s.MaxVolts > ExtraLowVoltage.LimitVolts(s.IsAlternating));
        if (beyond.Count > 0)
        {
            yield return $"{Names(beyond)}: above extra-low voltage (120 V DC, 50 V AC, IEC 61140): work for licensed people only.";
        }
    }

    private static List<Transformer> Mains(Panel panel) =>
        [.. panel.Parts.OfType<Transformer>().Where(t => t.PrimaryVolts > ExtraLowVoltage.LimitVolts(true))];

    private static string Names(IReadOnlyCollection<Part> parts)
    {
        var names = parts.Select(p => p.Designator).Order(NaturalOrder.Comparer).Take(NamesShown);
        var list = string.Join(", ", names);
        return parts.Count > NamesShown ? $"{list} and {parts.Count - NamesShown} more" : list;
    }
}
