namespace Schematic.Layout.Schematics;

/// <summary>What moves up and down as one: a rigid item, or one terminal of an elastic one.</summary>
internal sealed class ItemRow(SheetItem item)
{
    public SheetItem Item { get; } = item;

    public List<ItemPort> Ports { get; } = [];

    /// <summary>The ends of wires at the row's ports.</summary>
    public IEnumerable<ItemPort> Strands
    {
        get
        {
            foreach (var port in Ports)
            {
                if (port.Strands.Count == 0) yield return port;
                foreach (var strand in port.Strands) yield return strand;
            }
        }
    }

    /// <summary>Room needed above <see cref="Y"/>.</summary>
    public double Above { get; set; }

    /// <summary>Room needed below <see cref="Y"/>.</summary>
    public double Below { get; set; }

    public double Y { get; set; }
}
