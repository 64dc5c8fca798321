using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>A coil without suppression, and a suppression diode or varistor that is too weak for its coil.</summary>
public sealed class SuppressionCheck : ICheck
{
    private const string MissingRule = "coil-without-suppression";
    private const string WeakRule = "diode-underrated";
    private const string LowRule = "suppressor-too-low";

    /// <summary>A diode stands at least this many times the circuit's voltage backwards (usual in electronics, read: 2 to 3).</summary>
    private const double ReverseMargin = 2;

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [MissingRule, WeakRule, LowRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Quantities;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var circuit = context.Positions.Circuit.Circuit;
        foreach (var coil in context.Worst.Loads.Where(l => l.Load.Kind == ElementKind.Coil && l.MostVolts is not null))
        {
            var across = DiodesAcross(circuit, coil.Load).ToList();
            var suppressors = SuppressorsAcross(context, circuit, coil.Load).ToList();
            if (across.Count == 0 && suppressors.Count == 0 && coil.Load.Part.Winding is { HasSuppression: false })
                yield return Missing(context, coil);
            foreach (var diode in across)
            {
                if (Weak(coil, (Diode)diode.Part) is { } weak) yield return weak;
            }

            foreach (var suppressor in suppressors.Where(s => s.StandsVolts < coil.MostVolts!.Value - 1e-6)) yield return TooLow(coil, suppressor);
        }
    }

    private static IEnumerable<Suppressor> SuppressorsAcross(AnalysisContext context, Circuit circuit, Element coil) =>
        from suppressor in context.Panel.Parts.OfType<Suppressor>()
        let first = circuit.NodeOf(suppressor.At(suppressor.Ends.From))
        let second = circuit.NodeOf(suppressor.At(suppressor.Ends.To))
        where (first == coil.FromNode && second == coil.ToNode) || (first == coil.ToNode && second == coil.FromNode)
        select suppressor;

    private static Diagnostic TooLow(LoadLevel coil, Suppressor suppressor) => new(
        LowRule, Severity.Error,
        $"{suppressor.Designator} across {coil.Name} stands {ValueText.Volts(suppressor.StandsVolts)}; it gets {ValueText.Volts(coil.MostVolts!.Value)} while {coil.Name} is fed.",
        suppressor.Span)
    {
        Subjects = [About.Part(suppressor), About.Part(coil.Load.Part)],
        Values = [About.Volts("stands", suppressor.StandsVolts!.Value), About.Volts("gets", coil.MostVolts.Value)],
        Help = "It conducts all the time and burns: take one that stands more than the highest supply voltage.",
        Trace = LoadWords.Trace(coil.MostVolts),
    };

    private static IEnumerable<Element> DiodesAcross(Circuit circuit, Element coil) => circuit.Elements.Where(e =>
        e.Kind == ElementKind.Diode && e.Part is Diode
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
