using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>Groups the devices of a unit, or loose ones, into blocks.</summary>
internal sealed class BlockFactory(CircuitMap map)
{
    private readonly FigureFactory _figures = new(map);

    /// <summary>The blocks of a unit: gangs by their actuator, contacts of relays, then loads.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="maxHeight">How high the rows of a block may stand: a longer gang is continued in a further block.</param>
    public ImmutableArray<Block> OfUnit(Unit unit, double maxHeight)
    {
        var blocks = ImmutableArray.CreateBuilder<Block>();
        foreach (var actuator in map.Panel.Actuators) blocks.AddRange(Gangs(unit.Devices.OfType<Switch>(), actuator.Name, maxHeight, false));
        var known = map.Panel.Actuators.Select(a => a.Name).ToHashSet(StringComparer.Ordinal);
        foreach (var orphan in unit.Devices.OfType<Switch>().Where(s => !known.Contains(s.Actuator)))
            blocks.AddRange(Single(_figures.Of(orphan), false));
        foreach (var relay in unit.Devices.OfType<Relay>()) blocks.AddRange(Single(_figures.Of(relay).Skip(1), false));
        var loads = unit.Devices.SelectMany(d => d is Switch ? [] : _figures.Of(d).Take(1));
        blocks.AddRange(Clusters([.. loads], maxHeight));
        return blocks.ToImmutable();
    }

    /// <summary>The blocks of devices that sit in no unit.</summary>
    public ImmutableArray<Block> OfLoose(Part device) => device is Switch pole
        ? [.. Gangs([pole], pole.Actuator, 1, true)]
        : [.. Single(_figures.Of(device), true)];

    /// <summary>The blocks of a loose gang.</summary>
    public ImmutableArray<Block> OfLooseGang(IEnumerable<Switch> gang, double maxHeight)
    {
        var poles = gang.ToList();
        return _figures.Rest.Find(poles[0].Actuator) is null
            ? [.. poles.SelectMany(p => Single(_figures.Of(p), true))]
            : [.. Gangs(poles, poles[0].Actuator, maxHeight, true)];
    }

    private IEnumerable<Block> Gangs(IEnumerable<Switch> switches, string actuatorName, double maxHeight, bool loose)
    {
        var actuator = _figures.Rest.Find(actuatorName);
        var poles = switches.Where(s => s.Actuator == actuatorName).ToList();
        var continued = false;
        foreach (var chunk in Chunks(poles, maxHeight))
        {
            var group = new FlipGroup(loose && chunk.Count == 1 && chunk[0].Pole.Throws.Length == 1);
            var rows = chunk.SelectMany(s => _figures.Of(s)).Select(f => new BlockRow(f, group)).ToImmutableArray();
            if (actuator is null) yield return new Block(rows, null, "");
            else yield return new Block(rows, actuator, (loose ? actuator.Name : HeadingOf(actuator)) + (continued ? " (continued)" : ""))
            {
                WordsWidth = loose ? 24 : 32,
                Words = loose && actuator.Description.Length > 0 ? actuator.Description + ": " : "",
            };
            continued = true;
        }
    }

    private static string HeadingOf(Actuator actuator) =>
        actuator.Description.Length == 0 ? actuator.Name : $"{actuator.Name}  {actuator.Description}";

    private static IEnumerable<Block> Single(IEnumerable<Figure> figures, bool loose) =>
        figures.Select(f => new Block([new BlockRow(f, new FlipGroup(loose && f.Ends.Length == 2))], null, ""));

    /// <summary>Devices that lie across each other, or share a contact, turn around together.</summary>
    private IEnumerable<Block> Clusters(ImmutableArray<Figure> figures, double maxHeight)
    {
        var done = new HashSet<Figure>();
        foreach (var first in figures)
        {
            if (!done.Add(first)) continue;
            var group = new FlipGroup(false);
            var rows = new List<BlockRow> { new(first, group) };
            var height = HeightOf(first);
            for (var i = 0; i < rows.Count && height < maxHeight; i++)
            {
                foreach (var other in figures)
                {
                    if (height >= maxHeight || done.Contains(other) || SharedSide(rows[i], other) is not { } turned) continue;
                    done.Add(other);
                    rows.Add(new BlockRow(other, group, turned));
                    height += HeightOf(other);
                }
            }

            yield return new Block([.. rows], null, "") { GapBefore = first == figures[0] ? Metrics.ItemGap : 0 };
        }
    }

    /// <summary>Null when nothing is shared; else whether the other must be turned so that the shared ends stand on one side.</summary>
    private bool? SharedSide(BlockRow row, Figure other)
    {
        foreach (var end in row.Figure.Ends)
        {
            foreach (var theirs in other.Ends)
            {
                if (map.AttachedTo(end.Terminal).Any(c => map.AttachedTo(theirs.Terminal).Contains(c)))
                    return row.IsBaseRight(end) != theirs.IsRight;
            }
        }

        return null;
    }

    /// <summary>As many poles as fit under one head, in blocks of about one size.</summary>
    private IEnumerable<List<Switch>> Chunks(List<Switch> poles, double maxHeight)
    {
        var heights = poles.ConvertAll(p => _figures.Of(p).Sum(HeightOf));
        var parts = Math.Max(1, Math.Ceiling(heights.Sum() / maxHeight));
        var target = Math.Min(maxHeight, (heights.Sum() / parts) + heights.DefaultIfEmpty(0).Max());
        var chunk = new List<Switch>();
        var height = 0.0;
        for (var i = 0; i < poles.Count; i++)
        {
            if (chunk.Count > 0 && height + heights[i] > target)
            {
                yield return chunk;
                (chunk, height) = ([], 0);
            }

            chunk.Add(poles[i]);
            height += heights[i];
        }

        if (chunk.Count > 0) yield return chunk;
    }

    /// <summary>Room for a figure with a few further wires on its ends.</summary>
    private double HeightOf(Figure figure) => Metrics.Up(figure.Above(Facing.Normal) + figure.Below(Facing.Normal))
        + (Metrics.RowPitch * figure.Ends.Sum(e => Math.Max(0, map.EdgesAt(e.Terminal).Count - 1)));
}
