using Schematic.Text;

namespace Schematic.Model;

/// <summary>One wire, or one core of a cable, from end to end.</summary>
public sealed record Wire(string Designator, TerminalId From, TerminalId To, SourceSpan Span)
{
    /// <summary>Cross-section, or null when it is to be chosen.</summary>
    public WireGauge? Gauge { get; init; }

    /// <summary>Whether the program chose the cross-section, the file stating none.</summary>
    public bool IsGaugeChosen { get; init; }

    /// <summary>The cross-section as it is printed: a chosen one carries the mark of what is assumed; null where there is none.</summary>
    public string? GaugeText => Gauge is null ? null : IsGaugeChosen ? ValueText.AssumedMark + Gauge.Text : Gauge.Text;

    /// <summary>Colour, or null when not stated.</summary>
    public WireColour? Colour { get; init; }

    /// <summary>Length in millimetres, or null when not stated.</summary>
    public double? LengthMm { get; init; }

    /// <summary>The cable it is a core of, or null.</summary>
    public string? Cable { get; init; }

    /// <summary>The core's name in the cable, or null.</summary>
    public string? Core { get; init; }

    /// <summary>Where the first end is written.</summary>
    public SourceSpan FromSpan { get; init; } = Span;

    /// <summary>Where the second end is written.</summary>
    public SourceSpan ToSpan { get; init; } = Span;
}
