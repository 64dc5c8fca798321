using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>Something the user states to be true; the proof holds it or refutes it.</summary>
/// <param name="When">When it is to hold: an empty <see cref="AllCondition"/> for always.</param>
/// <param name="Span">Where it is stated.</param>
public abstract record Expectation(Condition When, SourceSpan Span)
{
    /// <summary>
    /// Whether it is to hold also while an actuator moves between two neighbouring positions at both of which it is asked.
    /// </summary>
    public bool IsInPassing { get; init; }

    /// <summary>Asks for the answer that a visitor has for this kind of claim.</summary>
    public abstract T Accept<T>(IExpectationVisitor<T> visitor);
}

/// <summary>An input reads a level.</summary>
public sealed record LevelExpectation(TerminalId Input, InputLevel Level, Condition When, SourceSpan Span)
    : Expectation(When, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IExpectationVisitor<T> visitor) => visitor.Visit(this);
}

/// <summary>Two terminals are joined, or are not, through contacts and wires alone.</summary>
public sealed record ContinuityExpectation(TerminalId From, TerminalId To, bool Closed, Condition When, SourceSpan Span)
    : Expectation(When, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IExpectationVisitor<T> visitor) => visitor.Visit(this);
}

/// <summary>A load is energised, or is not.</summary>
public sealed record EnergisedExpectation(string Part, bool Energised, Condition When, SourceSpan Span)
    : Expectation(When, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IExpectationVisitor<T> visitor) => visitor.Visit(this);
}

/// <summary>No state joins any source with any target, loads counting as joints.</summary>
public sealed record NeverExpectation(
    ImmutableArray<TerminalId> Sources, ImmutableArray<TerminalId> Targets, Condition When, SourceSpan Span)
    : Expectation(When, Span)
{
    /// <inheritdoc/>
    public override T Accept<T>(IExpectationVisitor<T> visitor) => visitor.Visit(this);
}
