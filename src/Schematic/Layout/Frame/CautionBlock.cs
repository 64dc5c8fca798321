using System.Collections.Immutable;
using Schematic.Layout.Tables;

namespace Schematic.Layout.Frame;

/// <summary>All cautions of a pack that needs no index, where no sheet's box has room for them: they flow like a list.</summary>
internal sealed class CautionBlock(ImmutableArray<string> cautions) : FlowBlock(Heading)
{
    /// <summary>What stands above them.</summary>
    public const string Heading = "All cautions";

    // Sentences in narrower lines are hard to read.
    private const double LeastWidth = 80;

    /// <inheritdoc/>
    protected override FlowShape? Shape(FlowRoom room) => room.WidthMm < Math.Min(LeastWidth, room.SheetMm) - 1e-6 ? null
        : new FlowShape(room.WidthMm, 1, FlowRow.None, [.. cautions.SelectMany(c => SheetList.Note(c, room, isFirst: false))], []);
}
