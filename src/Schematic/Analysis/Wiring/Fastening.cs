using Schematic.Model;
using Schematic.Text;

namespace Schematic.Analysis.Wiring;

/// <summary>What a hand fastens at a terminal.</summary>
public enum FasteningKind
{
    /// <summary>The end of a wire or of a cable's core.</summary>
    Wire,

    /// <summary>The lead of a component that hangs between terminals: the coil's diode, a resistor.</summary>
    Lead,

    /// <summary>A jumper bar of a strip.</summary>
    Jumper,

    /// <summary>The screen of a cable.</summary>
    Screen,
}

/// <summary>One thing that is fastened at a terminal.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="At">The terminal.</param>
/// <param name="Name">What it is called on paper: the wire's number, the lead's terminal (<c>D1:K</c>), the bar's first terminal, the cable.</param>
/// <param name="Span">Where the file says so.</param>
public sealed record Fastening(FasteningKind Kind, TerminalId At, string Name, SourceSpan Span)
{
    /// <summary>The wire, for a wire's end.</summary>
    public Wire? Wire { get; init; }

    /// <summary>The component's terminal, for a lead.</summary>
    public TerminalId? Device { get; init; }

    /// <summary>How a sentence calls it.</summary>
    public string Words => Kind switch
    {
        FasteningKind.Wire => Name,
        FasteningKind.Lead => $"lead {Name}",
        FasteningKind.Jumper => "a jumper bar",
        FasteningKind.Screen => $"the screen of {Name}",
        _ => throw new ArgumentOutOfRangeException(nameof(Kind)),
    };
}
