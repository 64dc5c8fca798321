using System.Collections.Immutable;

namespace Schematic.Drawing;

/// <summary>
/// What one sheet shows inside its frame, before the frame, title block and sheet number are put around it. Marks are in
/// sheet coordinates and stay inside <c>SheetFrame.ContentBox</c>.
/// </summary>
public sealed record SheetContent(SheetKind Kind, string Title, ImmutableArray<Mark> Marks);
