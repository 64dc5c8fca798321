namespace Schematic.Layout.Wirings;

/// <summary>What a wiring sheet is called: what it holds.</summary>
internal static class SheetTitle
{
    private const int NamesShown = 5;

    public static string Of(WiringMap map, SheetDesign design)
    {
        var equipment = design.Arrangement.Columns.SelectMany(c => c).Select(p => p.Equipment).Distinct().OrderBy(e => e.Index).ToList();
        var main = equipment.Where(e => e is not (DeviceEquipment or GangEquipment or SpliceEquipment)).ToList();
        var named = main.Count > 0 ? main : equipment;
        var cables = design.Channels.SelectMany(c => c.Loops).Select(l => l.Cable.Designator).Distinct().Select(c => "cable " + c);
        var words = named.Select(e => $"{e.Word} {e.Name}".Trim()).Concat(cables).ToList();
        var shown = string.Join(", ", words.Take(NamesShown));
        return "Wiring: " + shown + (words.Count > NamesShown ? " …" : "");
    }
}
