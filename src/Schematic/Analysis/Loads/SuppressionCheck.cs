using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>A coil without suppression, and a suppression diode that is too weak for its coil.</summary>
public sealed class SuppressionCheck : ICheck
{
    private const string MissingRule = "coil-without-suppression";
    private const string WeakRule = "diode-underrated";

    /// <summary>A diode stands at least this many times the circuit's voltage backwards (usual in electronics, read: 2 to 3).</summary>
    private const double ReverseMargin = 2;

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [MissingRule, WeakRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Quantities;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var circuit = context.Positions.Circuit.Circuit;
        foreach (var coil in context.Worst.Loads.Where(l => l.Load.Kind == ElementKind.Coil && l.MostVolts is not null))
        {
            var across = DiodesAcross(circuit, coil.Load).ToList();
            if (across.Count == 0 && coil.Load.Part.Winding is { HasSuppression: false }) yield return Missing(context, coil);
            foreach (var diode in across)
            {
                if (Weak(coil, (Diode)diode.Part) is { } weak) yield return weak;
            }
        }
    }

    private static IEnumerable<Element> DiodesAcross(Circuit circuit, Element coil) => circuit.Elements.Where(e =>
        e.Kind == ElementKind.Diode
        && ((e.FromNode == coil.FromNode && e.ToNode == coil.ToNode) || (e.FromNode == coil.ToNode && e.ToNode == coil.FromNode)));

    private static Diagnostic Missing(AnalysisContext context, LoadLevel coil)
    {
        var (plus, minus) = coil.IsForward ? (coil.Load.From, coil.Load.To) : (coil.Load.To, coil.Load.From);
        var help = coil.IsForward && coil.IsBackward
            ? $"It is fed both ways, so a plain diode would short the supply: put a varistor, two zener diodes back to back, or a resistor and a capacitor in series (about 100 ohm and 0.1 uF, common practice) across {coil.Load.From} and {coil.Load.To}."
            : $"Put a diode across it: cathode (K, the ring) on {Place(context, plus)}, which is plus, anode (A) on {Place(context, minus)}; or write 'suppressed' if the part has its own.";
        return new Diagnostic(
            MissingRule, Severity.Warning, $"{coil.Name} has no suppression: switching it off gives a pulse of many hundred volts.", coil.Load.Part.Span)
        {
            Subjects = [About.Part(coil.Load.Part), About.Terminal(plus), About.Terminal(minus)],
            Help = help,
        };
    }

    /// <summary>The terminal, with the contact it is led to inside a made unit: there a hand can reach it.</summary>
    private static string Place(AnalysisContext context, TerminalId terminal) =>
        context.AttachmentsOf(terminal).Select(a => a.Contact).FirstOrDefault() is { Part: not null } contact
            ? $"{terminal} (at {contact})" : terminal.ToString();

    private static Diagnostic? Weak(LoadLevel coil, Diode diode)
    {
        var amps = coil.MostAmps!.Value;
        var volts = coil.MostVolts!.Value;
        var reason = diode.MaxAmps < amps
            ? $"carries the coil's {ValueText.Amps(amps)} at switching off; it is rated {ValueText.Amps(diode.MaxAmps.Value)}"
            : diode.ReverseVolts < ReverseMargin * volts
                ? $"stands {ValueText.Volts(volts)} backwards; it is rated {ValueText.Volts(diode.ReverseVolts.Value)}, less than twice that"
                : null;
        return reason is null ? null : new Diagnostic(WeakRule, Severity.Warning, $"{diode.Designator} across {coil.Name} {reason}.", diode.Span)
        {
            Subjects = [About.Part(diode), About.Part(coil.Load.Part)],
            Values = [About.Amps("current", amps), About.Volts("voltage", volts)],
            Help = "Take a diode for at least the coil's current and twice the circuit's voltage, better ten times.",
        };
    }
}
