using System.Collections.Immutable;

namespace Schematic.Drawing;

/// <summary>
/// What one sheet shows inside its frame, before the frame, title block and sheet number are put around it. Marks are in
/// sheet coordinates and stay inside <c>SheetFrame.ContentBox</c>.
/// </summary>
public sealed record SheetContent(SheetKind Kind, string Title, ImmutableArray<Mark> Marks)
{
    /// <summary>The things that stand on the sheet and can be referred to. A thing may stand on several sheets, or twice on one.</summary>
    public ImmutableArray<PlacedThing> Things { get; init; } = [];

    /// <summary>Whether the sheet only goes on with what another began: it has a low title block.</summary>
    public bool IsContinued { get; init; }
}
