using System.Collections.Immutable;
using Schematic.Layout.Tables;

namespace Schematic.Layout.Faces;

/// <summary>A picture that flows on a sheet as a whole, with lines of text under its heading.</summary>
internal sealed class FaceBlock : FlowBlock
{
    private readonly Block _picture;

    public FaceBlock(string title, Block picture)
        : base(title) => _picture = picture;

    /// <inheritdoc/>
    public override bool IsWhole => true;

    /// <inheritdoc/>
    protected override FlowShape? Shape(FlowRoom room)
    {
        if (room.WidthMm < Math.Min(_picture.Width, room.SheetMm) - 1e-6) return null;
        return new FlowShape(room.WidthMm, 1, FlowRow.None, [new FlowRow(_picture.Height, () => _picture.At(0, 0).Marks)], []);
    }
}

/// <summary>Words that stay together.</summary>
internal sealed class NoteBlock(string title, ImmutableArray<string> notes) : FlowBlock(title)
{
    /// <summary>Least width: so many letters stand in a line.</summary>
    private const double LeastMm = 32 * FaceText.MainMm;

    /// <inheritdoc/>
    public override bool IsWhole => true;

    /// <inheritdoc/>
    protected override FlowShape? Shape(FlowRoom room)
    {
        if (room.WidthMm < Math.Min(LeastMm, room.SheetMm) - 1e-6) return null;
        var words = Block.Stack(0.9, notes.Select(n => FaceText.Lines(n, FaceText.MainMm, room.WidthMm)));
        return new FlowShape(room.WidthMm, 1, FlowRow.None, [new FlowRow(words.Height, () => words.At(0, 0).Marks)], []);
    }
}
