using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Quantities;
using Schematic.Model;

namespace Schematic.Bench;

/// <summary>
/// What lies on the bench as a value: terminals, each a place of its own, with joints, contacts and devices between them. A
/// faulty unit is another value, made from the sound one.
/// </summary>
public sealed record BenchCircuit
{
    /// <summary>Above this a joint is no joint but a resistance (own choice; a sound one has milliohms).</summary>
    public const double MostJointOhms = 2;

    /// <summary>The name that stands for shell, chassis or earth in readings.</summary>
    public const string FrameName = "frame";

    private readonly Dictionary<TerminalId, int> _numberOf;
    private readonly Dictionary<Stand, bool[]> _closed = [];
    private readonly bool[] _plain;

    private BenchCircuit(Dictionary<TerminalId, int> numberOf, bool[] plain) => (_numberOf, _plain) = (numberOf, plain);

    /// <summary>The frame as a terminal.</summary>
    public static TerminalId Frame => new(FrameName, "");

    /// <summary>The panel it is a part of, cut down to what lies on the bench.</summary>
    public required Panel Panel { get; init; }

    /// <summary>What lies on the bench.</summary>
    public required BenchSide Side { get; init; }

    /// <summary>All terminals; the frame, where there is one, is the last.</summary>
    public required ImmutableArray<TerminalId> Terminals { get; init; }

    /// <summary>Numbers of the terminals that a lead can be put on.</summary>
    public required ImmutableArray<int> Accessible { get; init; }

    /// <summary>Joints.</summary>
    public required ImmutableArray<BenchJoint> Joints { get; init; }

    /// <summary>Switching contacts.</summary>
    public required ImmutableArray<BenchContact> Contacts { get; init; }

    /// <summary>Devices.</summary>
    public required ImmutableArray<BenchElement> Elements { get; init; }

    /// <summary>Pairs of terminals of which nobody knows whether they are joined inside a device: between them nothing is expected.</summary>
    public ImmutableArray<(int One, int Other)> MayBeJoined { get; init; } = [];

    /// <summary>Terminals from which a wire leads nobody knows where.</summary>
    public ImmutableArray<int> LeadingAnywhere { get; init; } = [];

    /// <summary>Contacts in reach that are left out because they are not traced: nothing is expected of them.</summary>
    public ImmutableArray<TerminalId> LeftOut { get; init; } = [];

    /// <summary>Plugs that are pulled off a unit before a harness is measured alone, and what from.</summary>
    public ImmutableArray<(string Plug, string From)> PulledOff { get; init; } = [];

    /// <summary>The actuators that a hand can move.</summary>
    public ImmutableArray<Actuator> Actuators => Panel.Actuators;

    /// <summary>The number of the frame, or -1 where there is none.</summary>
    public int FrameNumber => NumberOf(Frame);

    /// <summary>The number of a terminal, or -1 for one that is not on the bench.</summary>
    public int NumberOf(TerminalId terminal) => _numberOf.GetValueOrDefault(terminal, -1);

    /// <summary>Reads what lies on the bench from a panel.</summary>
    /// <param name="whole">The panel.</param>
    /// <param name="side">What lies on the bench.</param>
    /// <param name="part">The one connector or strip that leads are put on, or null for all.</param>
    public static BenchCircuit Read(Panel whole, BenchSide side, string? part = null)
    {
        var (panel, accessible, notTraced) = BenchCut.Cut(whole, side, part);
        var context = new AnalysisContext(panel);
        var circuit = new Circuit(context);
        var numbers = new Dictionary<TerminalId, int>();
        foreach (var terminal in panel.Parts.SelectMany(p => p.Terminals.Select(t => p.At(t.Name)))) numbers.TryAdd(terminal, numbers.Count);
        var joints = Joined(context, circuit).Where(j => numbers.ContainsKey(j.From) && numbers.ContainsKey(j.To)).ToList();
        var hasFrame = panel.Parts.OfType<Connector>().Any();
        if (hasFrame) numbers.TryAdd(Frame, numbers.Count);
        ImmutableArray<BenchJoint> numbered = [.. joints.Select(j => new BenchJoint(numbers[j.From], numbers[j.To], j.Kind, j.Name, j.Ohms))];
        ImmutableArray<BenchContact> contacts = [.. circuit.Contacts.Where(c => !c.IsInside).Select(c => new BenchContact(numbers[c.Common], numbers[c.Throw], c))];
        ImmutableArray<BenchElement> elements =
        [
            .. from element in circuit.Elements
               where element is { Way: null, Gate: null }
               let value = BenchElement.ValueOf(element)
               where value is not null
               select new BenchElement(numbers[element.Outer], numbers[element.To], NameOf(element), value),
            .. panel.Parts.SelectMany((p, i) => Varying(p, i + 1)).Select(v => new BenchElement(numbers[v.From], numbers[v.To], v.Name, v.Value)),
        ];
        var all = accessible.Select(t => numbers[t]).ToImmutableArray();
        (numbered, contacts, var reached) = WithoutUntraced(numbered, contacts, elements, all);
        return new BenchCircuit(numbers, Plain(numbers.Count, numbered, contacts, elements))
        {
            Panel = panel,
            Side = side,
            Terminals = [.. numbers.Keys],
            Accessible = [.. reached, .. hasFrame ? [numbers[Frame]] : Array.Empty<int>()],
            Joints = numbered,
            Contacts = contacts,
            Elements = elements,
            MayBeJoined = [.. panel.Parts.OfType<Device>().SelectMany(d => d.UnknownPairs.Select(u => (numbers[d.At(u.From)], numbers[d.At(u.To)])))],
            LeadingAnywhere = [.. panel.Parts.OfType<FarEnd>().Select(f => numbers[f.At(FarEnd.TerminalName)])],
            PulledOff = side == BenchSide.Harness
                ? [.. whole.Parts.OfType<Connector>().Where(c => c.Mates is not null && panel.FindPart(c.Designator) is not null).Select(c => (c.Designator, c.Mates!))] : [],
            LeftOut = [.. notTraced, .. accessible.Where(t => !reached.Contains(numbers[t]))],
        };
    }

    /// <summary>The designator; of a part with several elements with the ends of this one.</summary>
    private static string NameOf(Element element) => element.Name != element.Part.Designator || element.Part.Branches.Length < 2
        ? element.Name
        : $"{element.Name} {element.Outer.Name} to {element.To.Name}";

    /// <summary>
    /// Leaves out switching contacts of which nobody knows where they close, with what leads to them alone: of them nothing is
    /// expected.
    /// </summary>
    private static (ImmutableArray<BenchJoint> Joints, ImmutableArray<BenchContact> Contacts, ImmutableArray<int> Accessible) WithoutUntraced(
        ImmutableArray<BenchJoint> joints, ImmutableArray<BenchContact> contacts, ImmutableArray<BenchElement> elements, ImmutableArray<int> accessible)
    {
        var known = contacts.Where(c => !c.Source.When.Leaves().OfType<UntracedCondition>().Any()).ToImmutableArray();
        if (known.Length == contacts.Length) return (joints, contacts, accessible);
        var used = known.SelectMany(c => new[] { c.From, c.To }).Concat(elements.SelectMany(e => new[] { e.From, e.To })).ToHashSet();
        var ends = contacts.Except(known).SelectMany(c => new[] { c.From, c.To }).Where(t => !used.Contains(t)).ToHashSet();
        var kept = joints.Where(j => !ends.Contains(j.From) && !ends.Contains(j.To)).ToImmutableArray();
        used.UnionWith(kept.SelectMany(j => new[] { j.From, j.To }));
        var gone = joints.Except(kept).SelectMany(j => new[] { j.From, j.To }).Concat(ends).Where(t => !used.Contains(t)).ToHashSet();
        return (kept, known, [.. accessible.Where(t => !gone.Contains(t))]);
    }

    /// <summary>Whether a terminal of the sound circuit has nothing on it but joints that somebody soldered and may have exchanged.</summary>
    internal bool IsPlain(int terminal) => _plain[terminal];

    private static bool[] Plain(int count, ImmutableArray<BenchJoint> joints, ImmutableArray<BenchContact> contacts, ImmutableArray<BenchElement> elements)
    {
        var plain = new bool[count];
        Array.Fill(plain, true);
        foreach (var joint in joints.Where(j => !j.IsSoldered)) plain[joint.From] = plain[joint.To] = false;
        foreach (var contact in contacts) plain[contact.From] = plain[contact.To] = false;
        foreach (var element in elements) plain[element.From] = plain[element.To] = false;
        return plain;
    }

    /// <summary>For each contact whether it is closed while the actuators stand so and nothing is broken.</summary>
    public IReadOnlyList<bool> ClosedAt(Stand stand)
    {
        if (!_closed.TryGetValue(stand, out var closed))
            _closed[stand] = closed = [.. Contacts.Select(c => PowerOff.IsClosed(c.Source, stand, Actuators))];
        return closed;
    }

    private static IEnumerable<(TerminalId From, TerminalId To, JointKind Kind, string Name, double Ohms)> Joined(
        AnalysisContext context, Circuit circuit)
    {
        var wires = context.Panel.Wires.DistinctBy(w => w.Designator).ToDictionary(w => w.Designator, StringComparer.Ordinal);
        var joined = context.Connectivity;
        foreach (var joint in joined.FixedJoints.Concat(joined.WireJoints))
            yield return (joint.From, joint.To, joint.Kind, joint.Name, joint.Kind == JointKind.Wire ? OhmsOf(wires.GetValueOrDefault(joint.Name)) : ContactOhms);
        foreach (var joint in joined.NetJoints.Where(j => !joined.ByWires.AreJoined(j.From, j.To)))
            yield return (joint.From, joint.To, joint.Kind, joint.Name, ContactOhms);
        foreach (var part in circuit.Protectors)
            yield return (part.At(part.Terminals[0].Name), part.At(part.Terminals[1].Name), JointKind.Jumper, part.Designator, ContactOhms);
    }

    /// <summary>What varies has any value of its range, a few parts in a hundred beyond it at either end.</summary>
    private static IEnumerable<(TerminalId From, TerminalId To, string Name, ElementValue Value)> Varying(Part part, int number)
    {
        if (part is RangedResistor ranged)
        {
            var turned = ranged.Kind is RangedResistorKind.Rheostat or RangedResistorKind.Photoresistor ? ElementValue.Alone : 0;
            var value = ranged is { Least.Ohms: { } least, Most.Ohms: { } most } ? BenchElement.Between(least, most) with { Slides = turned } : BenchElement.AnyOhms;
            yield return (ranged.At("1"), ranged.At("2"), ranged.Designator, value);
        }

        if (part is not Potentiometer track) yield break;
        var (first, wiper, last) = (track.At(Potentiometer.FirstEnd), track.At(Potentiometer.WiperEnd), track.At(Potentiometer.LastEnd));
        var (before, behind) = (BenchElement.AnyOhms, BenchElement.AnyOhms);
        if (track.Ohms is { } whole)
        {
            var (from, to) = (track.Travel.From * whole, track.Travel.To * whole);
            (before, behind) = (BenchElement.Between(from, to) with { Slides = 1, Track = number }, BenchElement.Between(whole - to, whole - from) with { Slides = -1, Track = number });
        }

        yield return (first, wiper, $"{track.Designator} {first.Name} to {wiper.Name}", before);
        yield return (wiper, last, $"{track.Designator} {wiper.Name} to {last.Name}", behind);
    }

    private static double OhmsOf(Wire? wire) => wire is { Gauge: { } gauge, LengthMm: { } length }
        ? Math.Clamp(CopperWire.Ohms(gauge, length), ContactOhms, MostJointOhms * 0.99)
        : ContactOhms;

    /// <summary>What a sound joint or contact has: some milliohms (from memory).</summary>
    internal const double ContactOhms = 0.01;
}
