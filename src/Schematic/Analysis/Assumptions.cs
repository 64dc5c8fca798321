using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Loads;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis;

/// <summary>Everything that the program assumes about a panel, in the order of the file.</summary>
public sealed class Assumptions
{
    private readonly ILookup<Subject, Assumption> _of;

    /// <summary>Reads them from what the panel does not state.</summary>
    public Assumptions(Panel panel)
    {
        var reader = new Reader();
        All = [.. panel.Parts.SelectMany(p => p.Accept(reader))];
        _of = All.SelectMany(a => a.Subjects.Select(s => (Subject: s, Assumption: a))).ToLookup(p => p.Subject, p => p.Assumption);
    }

    /// <summary>All of them; cross-sections that the program chose are with the wires of the load sheet.</summary>
    public ImmutableArray<Assumption> All { get; }

    /// <summary>What is assumed of a thing.</summary>
    public IEnumerable<Assumption> Of(Subject subject) => _of[subject];

    /// <summary>The finding with the assumptions that it rests on.</summary>
    public Diagnostic Beside(Diagnostic finding)
    {
        if (finding.Severity == Severity.Note) return finding;
        var subjects = finding.Subjects.Concat(finding.Trace.OfType<FactStep>().SelectMany(f => f.Subjects));
        ImmutableArray<string> rests = [.. subjects.Distinct().SelectMany(Of).Distinct().Where(a => a.Rules.Contains(finding.Rule)).Select(a => a.ToString())];
        return rests.IsEmpty ? finding : finding with { Assumed = rests };
    }

    /// <summary>What is assumed of each kind of part.</summary>
    private sealed class Reader : IPartVisitor<IEnumerable<Assumption>>
    {
        private readonly HashSet<object> _inserts = new(ReferenceEqualityComparer.Instance);

        public IEnumerable<Assumption> Visit(Relay relay)
        {
            foreach (var one in OfCoil(relay, relay.Coil)) yield return one;
            if (relay.Coil.ReleasesVolts is not null || LoadLimits.ReleaseVolts(relay.Coil) is not { } releases) yield break;
            var volts = ValueText.Volts(releases);
            yield return Make(
                AssumptionKind.Releases, relay, $"releases below {volts}",
                relay.Coil.RatedVolts is null ? "10 % of what it operates at (from memory)" : "10 % of its rated voltage (from memory)", $"releases {volts}");
        }

        public IEnumerable<Assumption> Visit(Solenoid solenoid) => OfCoil(solenoid, solenoid.Coil);

        public IEnumerable<Assumption> Visit(Lamp lamp)
        {
            if (lamp.RatedAmps is null && lamp.ColdOhms is { } cold)
                yield return Make(AssumptionKind.Takes, lamp, $"has {ValueText.Ohms(lamp.HotOhms)} when lit", $"ten times its {ValueText.Ohms(cold)} cold", "its amperes");
            if (lamp.RatedVolts is not { } rated) yield break;
            yield return Make(AssumptionKind.Lit, lamp, $"counts as lit from {ValueText.Volts(LoadLimits.LampFraction * rated)}, as bright enough from {ValueText.Volts(LoadNeed.LampLeast * rated)}",
                "half its rated voltage, a tenth of its light; 80 % of it (common practice, no source)", null);
            yield return Make(AssumptionKind.Stands, lamp, $"stands {ValueText.Volts(LoadNeed.LampMost * rated)}",
                "110 % of its rated voltage (common practice, no source)", null);
        }

        public IEnumerable<Assumption> Visit(Led led)
        {
            if (led.ForwardVolts is null)
                yield return Make(AssumptionKind.Drop, led, $"drops {ValueText.Volts(LoadLimits.ForwardVolts(led))}", "red, yellow and orange ones (second-hand)", ValueText.Volts(LoadLimits.ForwardVolts(led)));
            if (led.RatedAmps is not { } rated)
                yield return Make(AssumptionKind.Takes, led, $"takes {ValueText.Amps(LoadLimits.UsualLedAmps)} at its voltage", "an indicator (common practice, no source)", ValueText.Amps(LoadLimits.UsualLedAmps));
            else
                yield return Make(AssumptionKind.Lit, led, $"counts as lit from {ValueText.Amps(LoadLimits.LedFraction * rated)}", "a fifth of its rated current (own choice)", null);
        }

        public IEnumerable<Assumption> Visit(Consumer consumer)
        {
            if (consumer.OperatesVolts is null && LoadLimits.OperateVolts(consumer) is { } operates)
            {
                var volts = ValueText.Volts(operates);
                yield return Make(AssumptionKind.Operates, consumer, $"works from {volts}",
                    consumer.Kind == ConsumerKind.Meter ? "a tenth of its scale (own choice)" : "75 % of its rated voltage (own choice)", $"operates {volts}");
            }

            if (consumer is { MaxVolts: null, RatedVolts: { } rated }) yield return OfMost(consumer, rated);
        }

        public IEnumerable<Assumption> Visit(Diode diode) => diode.IsDropStated ? [] :
        [
            Make(AssumptionKind.Drop, diode, $"drops {ValueText.Volts(diode.ForwardVolts)}", "silicon", $"drop {ValueText.Volts(diode.ForwardVolts)}"),
        ];

        public IEnumerable<Assumption> Visit(Board board) =>
            from input in board.Inputs
            where input.LowVolts is null || input.HighVolts is null
            let low = input.LowVolts is null ? LoadLimits.LowVolts(input) : (double?)null
            let high = input.HighVolts is null ? LoadLimits.HighVolts(input) : (double?)null
            group input by (low, high, IsOfPull: (input.PullUpVolts ?? input.MaxVolts) is not null) into alike
            let reads = Joined(alike.Key.low is { } l ? $"low up to {ValueText.Volts(l)}" : null, alike.Key.high is { } h ? $"high from {ValueText.Volts(h)}" : null, " and ")
            let words = Joined(alike.Key.low is { } l ? $"low {ValueText.Volts(l)}" : null, alike.Key.high is { } h ? $"high {ValueText.Volts(h)}" : null, " ")
            select new Assumption(
                AssumptionKind.Level, [.. alike.Select(i => About.Terminal(board.At(i.Terminal)))], $"{(alike.Count() == 1 ? "reads" : "read")} {reads}",
                alike.Key.IsOfPull ? "a third and two thirds of the pull-up or highest voltage" : "levels of 5 V logic (from memory)", words);

        /// <summary>A half that takes the insert of its mate adds nothing of its own.</summary>
        public IEnumerable<Assumption> Visit(Connector connector) => !_inserts.Add(connector.Insert) ? [] : connector.Insert.Assumed
            .Select(a => Make(AssumptionKind.Arrangement, connector, $"has {a.What}", "nothing else is stated", a.Word));

        public IEnumerable<Assumption> Visit(Switch pole) => [];

        public IEnumerable<Assumption> Visit(Resistor resistor) => [];

        public IEnumerable<Assumption> Visit(RangedResistor resistor) => [];

        public IEnumerable<Assumption> Visit(Potentiometer track) => [];

        public IEnumerable<Assumption> Visit(BridgeRectifier rectifier) => rectifier.IsDropStated ? [] :
        [
            Make(AssumptionKind.Drop, rectifier, $"drops {ValueText.Volts(rectifier.ForwardVolts)} in each of two diodes", "silicon", $"drop {ValueText.Volts(rectifier.ForwardVolts)}"),
        ];

        public IEnumerable<Assumption> Visit(Transformer transformer) =>
        [
            Make(AssumptionKind.Stands, transformer, $"stands {ValueText.Volts(LoadNeed.CoilMost * transformer.PrimaryVolts)} at its primary", "110 % of its rated voltage (EN 50160, from memory)", null),
        ];

        public IEnumerable<Assumption> Visit(TransistorOutput transistor) => OfOutput(transistor, transistor);

        public IEnumerable<Assumption> Visit(Optocoupler coupler) =>
            OfOutput(coupler, coupler).Concat(OfInput(coupler)).Append(Make(
                AssumptionKind.Lit, coupler, $"switches from {ValueText.Amps(LoadLimits.CouplerFraction * LoadLimits.RatedAmps(coupler))} in its diode", "half its rated current (own choice)", null));

        private static IEnumerable<Assumption> OfInput(Optocoupler coupler)
        {
            if (coupler.ForwardVolts is null)
                yield return Make(AssumptionKind.Drop, coupler, $"drops {ValueText.Volts(LoadLimits.ForwardVolts(coupler))} in its diode", "an infrared diode (from memory)", ValueText.Volts(LoadLimits.ForwardVolts(coupler)));
            if (coupler.RatedAmps is null)
                yield return Make(AssumptionKind.Takes, coupler, $"takes {ValueText.Amps(LoadLimits.RatedAmps(coupler))} in its diode", "a usual one (from memory)", ValueText.Amps(LoadLimits.RatedAmps(coupler)));
        }

        private static IEnumerable<Assumption> OfOutput(Part part, ISemiconductorOutput output) => output.IsSaturationStated ? [] :
        [
            Make(AssumptionKind.Drop, part, $"drops {ValueText.Volts(output.SaturationVolts)} while it is on", "a saturated transistor (from memory)", $"saturates {ValueText.Volts(output.SaturationVolts)}"),
        ];

        public IEnumerable<Assumption> Visit(Capacitor capacitor) => [];

        public IEnumerable<Assumption> Visit(Suppressor suppressor) => [];

        public IEnumerable<Assumption> Visit(Device device)
        {
            if (device.Coil is { } coil)
            {
                foreach (var one in OfCoil(device, coil)) yield return one;
            }

            if (device.Diodes.Any(d => d.DropVolts is null))
                yield return Make(AssumptionKind.Drop, device, $"drops {ValueText.Volts(LoadLimits.DiodeVolts)} in its diode", "silicon", ValueText.Volts(LoadLimits.DiodeVolts));
        }

        public IEnumerable<Assumption> Visit(Fuse fuse) => [];

        public IEnumerable<Assumption> Visit(Breaker breaker) => [];

        public IEnumerable<Assumption> Visit(Supply supply) => [];

        public IEnumerable<Assumption> Visit(TerminalStrip strip) => [];

        public IEnumerable<Assumption> Visit(FarEnd end) => [];

        public IEnumerable<Assumption> Visit(Keypad keypad) => [];

        public IEnumerable<Assumption> Visit(Splice splice) => [];

        private static IEnumerable<Assumption> OfCoil(Part part, CoilData coil)
        {
            if (coil.OperatesVolts is null && LoadLimits.OperateVolts(coil) is { } operates)
            {
                var volts = ValueText.Volts(operates);
                yield return Make(AssumptionKind.Operates, part, $"operates from {volts}", "75 % of its rated voltage (from memory)", $"operates {volts}");
            }

            if (coil is { MaxVolts: null, RatedVolts: { } rated }) yield return OfMost(part, rated);
        }

        private static Assumption OfMost(Part part, double ratedVolts)
        {
            var volts = ValueText.Volts(LoadNeed.CoilMost * ratedVolts);
            return Make(AssumptionKind.Stands, part, $"stands {volts}", "110 % of its rated voltage (one relay series, read)", $"max {volts}");
        }

        private static Assumption Make(AssumptionKind kind, Part part, string what, string basis, string? statement) =>
            new(kind, [About.Part(part)], what, basis, statement);

        private static string Joined(string? one, string? other, string between) => string.Join(between, new[] { one, other }.OfType<string>());
    }
}
