using System.Collections.Immutable;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Bench.Readings;

/// <summary>A readings file: what was measured, by whom, with what, and what the meter showed.</summary>
public sealed record BenchReadings
{
    /// <summary>The text it came from.</summary>
    public required SourceText Source { get; init; }

    /// <summary>The panel file named, or null for an unknown unit.</summary>
    public string? PanelPath { get; init; }

    /// <summary>What lay on the bench, or null when not stated.</summary>
    public BenchSide? Side { get; init; }

    /// <summary>The one connector or strip that leads were put on, or null.</summary>
    public string? Part { get; init; }

    /// <summary>When, as the user wrote it.</summary>
    public string Date { get; init; } = "";

    /// <summary>Who.</summary>
    public string By { get; init; } = "";

    /// <summary>With which meter.</summary>
    public Meter Meter { get; init; } = new();

    /// <summary>Remarks.</summary>
    public ImmutableArray<string> Remarks { get; init; } = [];

    /// <summary>The print of what the panel stated when it was measured, or empty.</summary>
    public string Print { get; init; } = "";

    /// <summary>The connectors and actuators that the file itself declares, for a unit of which there is no panel.</summary>
    public Panel Declared { get; init; } = new();

    /// <summary>Those declarations as they were written.</summary>
    public ImmutableArray<string> DeclaredText { get; init; } = [];

    /// <summary>The readings in the order of the file, those left blank included.</summary>
    public ImmutableArray<NotedReading> Readings { get; init; } = [];

    /// <summary>The readings that were taken.</summary>
    public IEnumerable<NotedReading> Taken => Readings.Where(r => r.Value is not null);
}

/// <summary>One reading as noted.</summary>
/// <param name="Held">The actuators that were not at rest.</param>
/// <param name="Test">How the meter was set.</param>
/// <param name="Red">Under the red lead.</param>
/// <param name="Black">Under the black lead.</param>
/// <param name="Value">What it showed, or null while it is still to be taken.</param>
/// <param name="Span">The line.</param>
public sealed record NotedReading(
    ImmutableArray<HeldPlace> Held, MeterTest Test, ImmutableArray<TerminalId> Red, ImmutableArray<TerminalId> Black,
    NotedValue? Value, SourceSpan Span)
{
    /// <summary>What the eye or ear told besides: lamp, coil, resistor, led; or empty.</summary>
    public string Seen { get; init; } = "";

    /// <summary>A remark, or empty.</summary>
    public string Remark { get; init; } = "";
}

/// <summary>An actuator held away from rest: <see cref="Stand"/> says what the place means.</summary>
public readonly record struct HeldPlace(string Actuator, int Place);

/// <summary>What the meter showed.</summary>
/// <param name="Kind">Open, ohms or volts.</param>
/// <param name="Number">Ohms or volts; zero for open and for a beep.</param>
/// <param name="IsBeep">Whether only the beep was noted: closed.</param>
public sealed record NotedValue(ReadingKind Kind, double Number, bool IsBeep = false)
{
    /// <summary>Of what was turned from end to end the lowest reading on the way; <see cref="Number"/> is the highest.</summary>
    public double? Lowest { get; init; }

    /// <summary>As a readings file writes it.</summary>
    public string Text => Kind switch
    {
        _ when Lowest is { } low => $"{ValueText.Number(low)}..{ValueText.Number(Number)} ohm",
        ReadingKind.Open => "open",
        _ when IsBeep => "closed",
        ReadingKind.Volts => ValueText.Volts(Number),
        _ => ValueText.Ohms(Number),
    };
}

/// <summary>A readings file and everything that was found while it was read.</summary>
public sealed record ReadingsResult(BenchReadings Readings, ImmutableArray<Diagnostics.Diagnostic> Diagnostics)
{
    /// <summary>Whether an error was found.</summary>
    public bool HasErrors => Diagnostics.Any(d => d.Severity == Schematic.Diagnostics.Severity.Error);
}
