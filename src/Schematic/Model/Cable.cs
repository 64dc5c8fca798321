using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// A cable: cores in one sheath, perhaps under a screen. Its cores are wires of the panel that name it; the screen is a wire
/// named <see cref="Screen"/> as well.
/// </summary>
public sealed record Cable(string Designator, ImmutableArray<string> Cores, SourceSpan Span)
{
    /// <summary>The user's words for it; empty when none were given.</summary>
    public string Description { get; init; } = "";

    /// <summary>Length in millimetres, or null when not stated.</summary>
    public double? LengthMm { get; init; }

    /// <summary>Whether it has a screen.</summary>
    public bool HasScreen { get; init; }

    /// <summary>The wire designator of the screen, or null where it is not connected.</summary>
    public string? Screen { get; init; }

    /// <summary>The terminal that the screen ends on where it is joined at one end alone, or null.</summary>
    public TerminalId? ScreenTerminal { get; init; }

    /// <summary>What the parts list calls it, or null to derive one.</summary>
    public string? OrderText { get; init; }

    /// <summary>What one metre costs, or null when unknown.</summary>
    public Price? PricePerMetre { get; init; }
}
