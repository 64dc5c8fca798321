using Schematic.Text;

namespace Schematic.Diagnostics;

/// <summary>Another place that belongs to a finding, with a few words that say why.</summary>
public sealed record RelatedSpan(SourceSpan Span, string Message);
