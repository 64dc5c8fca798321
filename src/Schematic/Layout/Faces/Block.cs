using System.Collections.Immutable;
using Schematic.Drawing;

namespace Schematic.Layout.Faces;

/// <summary>Marks that belong together and the room they take, ready to be put somewhere on a sheet.</summary>
internal sealed record Block(ImmutableArray<Mark> Marks, BoxMm Box)
{
    public static Block Empty { get; } = new([], default);

    public double Width => Box.Width;

    public double Height => Box.Height;

    /// <summary>A block as large as its marks, lines counted by their centres.</summary>
    public static Block Around(IEnumerable<Mark> marks)
    {
        ImmutableArray<Mark> all = [.. marks];
        return new Block(all, all.Select(m => m.Bounds).Aggregate((a, b) => a.Union(b)));
    }

    /// <summary>The block with its upper left corner at (left, top).</summary>
    public Block At(double left, double top)
    {
        var (dx, dy) = (left - Box.Left, top - Box.Top);
        return new Block([.. Marks.Select(m => m.Moved(dx, dy))], Box.Moved(dx, dy));
    }

    /// <summary>Blocks below each other, flush left.</summary>
    public static Block Stack(double gap, params IEnumerable<Block> blocks) => Chain(blocks, b => (0, b.Height + gap));

    /// <summary>Blocks below each other on one middle line.</summary>
    public static Block Centred(double gap, params IEnumerable<Block> blocks)
    {
        var all = blocks.ToList();
        var width = all.Max(b => b.Width);
        var y = 0.0;
        var placed = new List<Block>();
        foreach (var block in all)
        {
            placed.Add(block.At((width - block.Width) / 2, y));
            y += block.Height + gap;
        }

        return new Block([.. placed.SelectMany(b => b.Marks)], new BoxMm(0, 0, width, y - gap));
    }

    /// <summary>Blocks beside each other, flush at the top.</summary>
    public static Block Row(double gap, params IEnumerable<Block> blocks) => Chain(blocks, b => (b.Width + gap, 0));

    /// <summary>Blocks beside each other, flush at the bottom: lines of different height share a base line.</summary>
    public static Block Level(double gap, params IReadOnlyCollection<Block> blocks)
    {
        var height = blocks.Max(b => b.Height);
        return Row(gap, blocks.Select(b => b.At(0, 0) with { Box = new BoxMm(0, b.Height - height, b.Width, b.Height) }));
    }

    private static Block Chain(IEnumerable<Block> blocks, Func<Block, (double Dx, double Dy)> step)
    {
        var placed = new List<Block>();
        var (x, y) = (0.0, 0.0);
        foreach (var block in blocks.Where(b => !b.Marks.IsEmpty))
        {
            placed.Add(block.At(x, y));
            var (dx, dy) = step(block);
            (x, y) = (x + dx, y + dy);
        }

        if (placed.Count == 0) return Empty;
        return new Block([.. placed.SelectMany(b => b.Marks)], placed.Select(b => b.Box).Aggregate((a, b) => a.Union(b)));
    }
}
