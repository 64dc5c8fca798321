using Schematic.Text;

namespace Schematic.Model;

/// <summary>The user's wish for where a part is drawn: a side, a sheet number from one, or both.</summary>
public sealed record PlaceHint(string Part, SheetSide? Side, int? Sheet, SourceSpan Span);
