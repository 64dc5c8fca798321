using Schematic.Text;

namespace Schematic.Model;

/// <summary>A device on terminals <c>1</c> and <c>2</c> that opens when too much current passes.</summary>
/// <param name="Designator">The reference designator.</param>
/// <param name="RatedAmps">What it carries for ever, in amperes, or null when unknown.</param>
/// <param name="Span">Where the designator is declared.</param>
public abstract record Protector(string Designator, double? RatedAmps, SourceSpan Span)
    : TwoEndedPart(Designator, new TerminalPair("1", "2"), Span)
{
    /// <inheritdoc/>
    public override bool IsLoad => false;
}
