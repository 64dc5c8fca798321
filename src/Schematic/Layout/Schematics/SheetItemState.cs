namespace Schematic.Layout.Schematics;

/// <summary>Where an item stands: its column, the heights of its rows in order, the slots of its strands.</summary>
internal sealed record SheetItemState(
    SheetItem Item, int Column, List<(ItemRow Row, double Y)> Rows, List<(ItemPort Strand, int Slot)> Slots);
