using Schematic.Text;

namespace Schematic.Model;

/// <summary>Another way to buy a part: priced beside the first in the parts list.</summary>
public sealed record PartAlternative(string Part, string OrderText, Price? UnitPrice, SourceSpan Span);
