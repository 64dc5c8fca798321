using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>A part with something on one end and nothing on the other, so that it cannot work.</summary>
public sealed class HalfConnectedCheck : ICheck
{
    private const string Rule = "half-connected";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Gaps;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
        from part in context.Panel.Parts
        from missing in part.Accept(new Missing(t => context.IsUsed(part.At(t)) || part.NotTraced.Contains(t)))
        select new Diagnostic(Rule, Severity.Error, $"{part.Designator} cannot work: {missing}.", part.Span)
        {
            Subjects = [About.Part(part)],
            Help = "Connect the open end, or leave the part out.",
        };

    private static IEnumerable<string> OpenPole(Pole pole, Func<string, bool> used)
    {
        var throws = pole.Throws.Select(t => t.Terminal).Distinct().ToImmutableArray();
        var common = used(pole.Common);
        if (common && !throws.Any(used)) return [$"nothing is on its terminal {NameList.Sentence(throws)}"];
        return !common && throws.Any(used) ? [$"nothing is on its terminal {pole.Common}"] : [];
    }

    private static IEnumerable<string> OpenEnds(IEnumerable<string> ends, Func<string, bool> used)
    {
        var all = ends.ToImmutableArray();
        return all.Any(used) ? all.Where(e => !used(e)).Select(e => $"nothing is on its terminal {e}") : [];
    }

    /// <summary>What a kind of part misses, by what is used of its terminals.</summary>
    private sealed class Missing(Func<string, bool> used) : IPartVisitor<IEnumerable<string>>
    {
        public IEnumerable<string> Visit(Switch pole) => OpenPole(pole.Pole, used);

        public IEnumerable<string> Visit(Relay relay)
        {
            if (!relay.Terminals.Any(t => used(t.Name))) return [];
            ImmutableArray<string> coil = [Relay.CoilEnds.From, Relay.CoilEnds.To];
            var open = coil.Where(c => !used(c)).ToImmutableArray();
            IEnumerable<string> ofCoil = open.Length == 0 ? []
                : open.Length == coil.Length ? [$"nothing is on its coil {NameList.Sentence(coil)}"]
                : [$"nothing is on its terminal {open[0]}"];
            return ofCoil.Concat(relay.ContactSets.SelectMany(p => OpenPole(p, used)));
        }

        public IEnumerable<string> Visit(Supply supply) => OpenEnds([supply.Ends.From, supply.Ends.To], used);

        public IEnumerable<string> Visit(Board board) => board.Inputs.Any(i => used(i.Terminal)) && !board.Grounds.Any(used)
            ? [$"inputs are connected, but nothing is on its ground {NameList.Sentence(board.Grounds)}"] : [];

        public IEnumerable<string> Visit(Lamp lamp) => Ends(lamp);

        public IEnumerable<string> Visit(Led led) => Ends(led);

        public IEnumerable<string> Visit(Solenoid solenoid) => Ends(solenoid);

        public IEnumerable<string> Visit(Diode diode) => Ends(diode);

        public IEnumerable<string> Visit(Resistor resistor) => Ends(resistor);

        public IEnumerable<string> Visit(RangedResistor resistor) => Ends(resistor);

        /// <summary>The wiper and one end make a rheostat, the two ends alone a plain resistor.</summary>
        public IEnumerable<string> Visit(Potentiometer track) =>
            track.Terminals.Count(t => used(t.Name)) == 1 ? OpenEnds(track.Terminals.Select(t => t.Name), used) : [];

        public IEnumerable<string> Visit(BridgeRectifier rectifier) => OpenEnds(BridgeRectifier.TerminalNames, used);

        /// <summary>The primary may be left out of a drawing that begins at the secondary, and a winding may be idle.</summary>
        public IEnumerable<string> Visit(Transformer transformer) =>
            transformer.Branches.SelectMany(w => OpenEnds([w.From, w.To], used));

        public IEnumerable<string> Visit(TransistorOutput transistor) => Ends(transistor);

        public IEnumerable<string> Visit(Optocoupler coupler) => coupler.Branches.SelectMany(w => OpenEnds([w.From, w.To], used));

        public IEnumerable<string> Visit(Consumer consumer) => Ends(consumer);

        public IEnumerable<string> Visit(Capacitor capacitor) => Ends(capacitor);

        public IEnumerable<string> Visit(Suppressor suppressor) => Ends(suppressor);

        public IEnumerable<string> Visit(Fuse fuse) => Ends(fuse);

        public IEnumerable<string> Visit(Breaker breaker) => Ends(breaker);

        public IEnumerable<string> Visit(Connector connector) => [];

        /// <summary>What works when only some of its terminals are connected is its own affair; a coil needs both its ends.</summary>
        public IEnumerable<string> Visit(Device device) => device.CoilEnds is { } coil ? OpenEnds([coil.From, coil.To], used) : [];

        public IEnumerable<string> Visit(TerminalStrip strip) => [];

        public IEnumerable<string> Visit(FarEnd end) => [];

        public IEnumerable<string> Visit(Keypad keypad) =>
            keypad.Rows.Any(used) == keypad.Columns.Any(used) ? [] : [$"nothing is on its {(keypad.Rows.Any(used) ? "columns" : "rows")}"];

        public IEnumerable<string> Visit(Splice splice) => [];

        private IEnumerable<string> Ends(TwoEndedPart part) => OpenEnds([part.Ends.From, part.Ends.To], used);
    }
}
