using System.Collections.Immutable;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>Sorts the parts of a panel into things that stand on a sheet as one.</summary>
internal sealed class EquipmentFinder : IPartVisitor<Equipment>
{
    private readonly WiringMap _map;
    private readonly HashSet<string> _wired;
    private readonly HashSet<string> _inUnit;
    private readonly DisjointSets<string> _units = new();
    private readonly ILookup<string, Part> _unitParts;
    private readonly Dictionary<string, Actuator> _actuators;
    private readonly ImmutableArray<Equipment>.Builder _found = ImmutableArray.CreateBuilder<Equipment>();

    private EquipmentFinder(WiringMap map, ImmutableArray<Attachment> inside, HashSet<string> wired)
    {
        (_map, _wired) = (map, wired);
        foreach (var attachment in inside) _units.Join(attachment.Device.Part, attachment.Contact.Part);
        _inUnit = inside.SelectMany(a => new[] { a.Device.Part, a.Contact.Part }).ToHashSet(StringComparer.Ordinal);
        _unitParts = Parts.Where(p => _inUnit.Contains(p.Designator)).ToLookup(p => _units.Find(p.Designator));
        _actuators = map.Panel.Actuators.DistinctBy(a => a.Name).ToDictionary(a => a.Name, StringComparer.Ordinal);
    }

    private IEnumerable<Part> Parts => _map.Panel.Parts.DistinctBy(p => p.Designator);

    /// <summary>The things in the order of their first parts.</summary>
    /// <param name="map">Parts and mates.</param>
    /// <param name="inside">The joints inside made units.</param>
    /// <param name="wired">The parts that links end on.</param>
    public static ImmutableArray<Equipment> Find(WiringMap map, ImmutableArray<Attachment> inside, HashSet<string> wired) =>
        new EquipmentFinder(map, inside, wired).Find();

    private ImmutableArray<Equipment> Find()
    {
        var done = new HashSet<string>(StringComparer.Ordinal);
        foreach (var part in Parts)
        {
            if (done.Contains(part.Designator) || part.Terminals.IsEmpty || IsPlugOfUnit(part)) continue; // Where nothing can be joined, no wire goes.
            var equipment = _inUnit.Contains(part.Designator) ? UnitOf(part) : part.Accept(this);
            done.UnionWith(equipment.Parts.Select(p => p.Designator));
            _found.Add(equipment);
        }

        return _found.ToImmutable();
    }

    private bool IsPlugOfUnit(Part part) => !_inUnit.Contains(part.Designator)
        && _map.Mates.TryGetValue(part.Designator, out var mate) && _inUnit.Contains(mate);

    private UnitEquipment UnitOf(Part part)
    {
        var members = _unitParts[_units.Find(part.Designator)].ToList();
        return new UnitEquipment(_found.Count, [.. members.OfType<Connector>()], [.. members.Where(m => m is not Connector)]);
    }

    Equipment IPartVisitor<Equipment>.Visit(Connector connector)
    {
        if (!_map.Mates.TryGetValue(connector.Designator, out var name)) return new BoxEquipment(_found.Count, connector);
        var mate = (Connector)_map.Parts[name];
        var (a, b) = (_wired.Contains(connector.Designator), _wired.Contains(name));
        return b && !a ? new PairEquipment(_found.Count, mate, connector, false) : new PairEquipment(_found.Count, connector, mate, a && b);
    }

    Equipment IPartVisitor<Equipment>.Visit(Switch pole) => _actuators.TryGetValue(pole.Actuator, out var actuator)
        ? new GangEquipment(
            _found.Count, actuator,
            [.. Parts.OfType<Switch>().Where(s => s.Gang == pole.Gang && s.Actuator == pole.Actuator && !_inUnit.Contains(s.Designator))])
        : Device(pole);

    Equipment IPartVisitor<Equipment>.Visit(Relay relay) => Device(relay);

    Equipment IPartVisitor<Equipment>.Visit(Solenoid solenoid) => Device(solenoid);

    Equipment IPartVisitor<Equipment>.Visit(Lamp lamp) => Device(lamp);

    Equipment IPartVisitor<Equipment>.Visit(Led led) => Device(led);

    Equipment IPartVisitor<Equipment>.Visit(Diode diode) => Device(diode);

    Equipment IPartVisitor<Equipment>.Visit(Resistor resistor) => Device(resistor);

    Equipment IPartVisitor<Equipment>.Visit(RangedResistor resistor) => Device(resistor);

    Equipment IPartVisitor<Equipment>.Visit(Potentiometer track) => Device(track);

    Equipment IPartVisitor<Equipment>.Visit(BridgeRectifier rectifier) => Device(rectifier);

    Equipment IPartVisitor<Equipment>.Visit(Transformer transformer) => Device(transformer);

    Equipment IPartVisitor<Equipment>.Visit(TransistorOutput transistor) => Device(transistor);

    Equipment IPartVisitor<Equipment>.Visit(Optocoupler coupler) => Device(coupler);

    Equipment IPartVisitor<Equipment>.Visit(Fuse fuse) => Device(fuse);

    Equipment IPartVisitor<Equipment>.Visit(Breaker breaker) => Device(breaker);

    Equipment IPartVisitor<Equipment>.Visit(Consumer consumer) => Device(consumer);

    Equipment IPartVisitor<Equipment>.Visit(Capacitor capacitor) => Device(capacitor);

    Equipment IPartVisitor<Equipment>.Visit(Suppressor suppressor) => Device(suppressor);

    Equipment IPartVisitor<Equipment>.Visit(Device device) => Device(device);

    Equipment IPartVisitor<Equipment>.Visit(Supply supply) => new BoxEquipment(_found.Count, supply);

    Equipment IPartVisitor<Equipment>.Visit(Board board) => new BoxEquipment(_found.Count, board);

    Equipment IPartVisitor<Equipment>.Visit(TerminalStrip strip) => new StripEquipment(_found.Count, strip);

    Equipment IPartVisitor<Equipment>.Visit(FarEnd end) => new BoxEquipment(_found.Count, end);

    Equipment IPartVisitor<Equipment>.Visit(Keypad keypad) => new BoxEquipment(_found.Count, keypad);

    Equipment IPartVisitor<Equipment>.Visit(Splice splice) => new SpliceEquipment(_found.Count, splice);

    private DeviceEquipment Device(Part part) => new(_found.Count, part);
}
