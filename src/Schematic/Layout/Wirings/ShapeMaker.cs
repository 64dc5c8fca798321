using System.Collections.Immutable;
using Schematic.Layout.Shapes;

namespace Schematic.Layout.Wirings;

/// <summary>Measures pieces: one shape for each kind of equipment.</summary>
internal sealed class ShapeMaker
{
    private readonly WiringMap _map;
    private readonly FigureFactory _figures;
    private readonly ContactArt _contacts;
    private readonly UnitArt _unitArt;
    private readonly ImmutableDictionary<int, UnitPlan> _plans;

    public ShapeMaker(WiringMap map, WiringWeights weights)
    {
        _map = map;
        _figures = new FigureFactory(map.Panel);
        _contacts = new ContactArt(_figures.Symbols);
        _unitArt = new UnitArt(map, _figures, _contacts, weights.NamesContactsByNumber);
        _plans = map.Equipment.OfType<UnitEquipment>().ToImmutableDictionary(u => u.Index, u => UnitPlan.Of(map, u, _figures));
    }

    /// <summary>The shape of a piece that turns in a way.</summary>
    public Shape Measure(Piece piece, Facing facing) => piece.IsPlaceHolder ? PlaceHolderShape.Measure(piece) : piece.Equipment switch
    {
        UnitEquipment unit => UnitShape.Measure(_map, piece, _plans[unit.Index], facing, _unitArt),
        PairEquipment pair => PairShape.Measure(_map, piece, pair, facing, _contacts),
        StripEquipment strip => StripShape.Measure(_map, piece, strip, facing),
        SpliceEquipment splice => SpliceShape.Measure(_map, piece, splice, facing),
        BoxEquipment box => BoxShape.Measure(_map, piece, box, facing),
        DeviceEquipment or GangEquipment => DeviceShape.Measure(_map, piece, facing, _figures),
        _ => throw new System.Diagnostics.UnreachableException(piece.Equipment.Word),
    };

    /// <summary>How many terminals or figures an equipment can be divided into.</summary>
    public int CountOf(Equipment equipment) => equipment switch
    {
        UnitEquipment unit => _plans[unit.Index].Count,
        PairEquipment pair => PairShape.ShownTerminals(_map, pair).Length,
        StripEquipment strip => StripShape.ShownTerminals(_map, strip.Strip).Length,
        BoxEquipment box => BoxShape.ShownTerminals(_map, box.Part).Length,
        GangEquipment gang => gang.Poles.Length,
        _ => 1,
    };

    /// <summary>Whether a piece may end before an item without tearing what belongs together.</summary>
    public bool IsBoundary(Equipment equipment, int index) => equipment is not UnitEquipment unit || _plans[unit.Index].IsBoundary(index);
}
