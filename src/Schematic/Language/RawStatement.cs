using Schematic.Text;

namespace Schematic.Language;

/// <summary>A statement as the cutter finds it: the stretch of text before its block, and the statements in the block.</summary>
internal sealed class RawStatement(int start)
{
    /// <summary>Where its first word begins.</summary>
    public int Start { get; } = start;

    /// <summary>Where its last word before the block ends.</summary>
    public int HeadEnd { get; set; } = start;

    /// <summary>The statements in its block, or null where it has none.</summary>
    public List<RawStatement>? Block { get; set; }

    /// <summary>Where the block's opening brace stands; meaningless without a block.</summary>
    public int BlockStart { get; set; }

    /// <summary>Just after the closing brace, or after the last character where it is missing.</summary>
    public int BlockEnd { get; set; }

    /// <summary>Whether a fault in it has been reported already.</summary>
    public bool IsReported { get; set; }

    /// <summary>Whether it holds a slip that was told and that the grammar would stumble over again.</summary>
    public bool HasSlip { get; set; }

    /// <summary>What stands before the block.</summary>
    public TextSpan Head => TextSpan.FromBounds(Start, HeadEnd);

    /// <summary>All of it.</summary>
    public TextSpan Span => TextSpan.FromBounds(Start, Block is null ? HeadEnd : BlockEnd);
}
