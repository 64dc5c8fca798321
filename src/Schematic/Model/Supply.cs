using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>A supply on two terminals, <c>+</c> and <c>-</c> unless its file names them.</summary>
public sealed record Supply(string Designator, double Volts, SourceSpan Span) : Part(Designator, Span)
{
    /// <summary>What its terminals are called where the file does not name them.</summary>
    public static readonly TerminalPair UsualEnds = new("+", "-");

    /// <summary>Its terminals, the positive one first; of an alternating supply the one that is positive in the first half-wave.</summary>
    public TerminalPair Ends { get; init; } = UsualEnds;

    /// <summary>Lowest setting in volts; equal to <see cref="Volts"/> when it cannot be adjusted.</summary>
    public double MinVolts { get; init; } = Volts;

    /// <summary>Highest setting in volts; equal to <see cref="Volts"/> when it cannot be adjusted.</summary>
    public double MaxVolts { get; init; } = Volts;

    /// <summary>Current limit in amperes, or null when unknown.</summary>
    public double? LimitAmps { get; init; }

    /// <summary>Internal resistance in ohms.</summary>
    public double SourceOhms { get; init; }

    /// <summary>Whether it is alternating current: its volts are then effective ones, and both half-waves are solved.</summary>
    public bool IsAlternating { get; init; }

    /// <summary>Whether it may be switched off and on at any time; else it counts as on throughout.</summary>
    public bool IsSwitched { get; init; }

    /// <summary>Whether the setting can be changed.</summary>
    public bool IsAdjustable => MinVolts < MaxVolts;

    /// <inheritdoc/>
    public override ImmutableArray<Pole> ContactSets => [];

    /// <inheritdoc/>
    public override ImmutableArray<TerminalPair> Branches => [];

    /// <inheritdoc/>
    public override CoilData? Winding => null;

    /// <inheritdoc/>
    public override bool IsLoad => false;

    /// <inheritdoc/>
    public override bool IsSymbol => false;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
