using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>A device with two ends and something between them, drawn as one symbol.</summary>
public abstract record TwoEndedPart : Part
{
    /// <summary>Gives the device its two terminals.</summary>
    /// <param name="designator">The reference designator.</param>
    /// <param name="ends">The names of its terminals; current is counted positive from the first to the second.</param>
    /// <param name="span">Where the designator is declared.</param>
    protected TwoEndedPart(string designator, TerminalPair ends, SourceSpan span) : base(designator, span)
    {
        Ends = ends;
        Terminals = [new Terminal(ends.From, span), new Terminal(ends.To, span)];
    }

    /// <summary>Its two ends: current is counted positive from the first to the second.</summary>
    public TerminalPair Ends { get; }

    /// <inheritdoc/>
    public override ImmutableArray<TerminalPair> Branches => [Ends];

    /// <inheritdoc/>
    public override ImmutableArray<Pole> ContactSets => [];

    /// <inheritdoc/>
    public override CoilData? Winding => null;

    /// <inheritdoc/>
    public override bool IsSymbol => true;
}
