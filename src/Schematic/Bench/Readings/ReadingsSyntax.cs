using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Text;

namespace Schematic.Bench.Readings;

/// <summary>A statement that readings files have and panel files have not.</summary>
public abstract record ReadingsStatement(WordSyntax Keyword, TextSpan Span) : StatementSyntax(Keyword, Span)
{
    /// <summary>Visitors are for statements of panels; a reader of panels never meets one of these.</summary>
    public sealed override T Accept<T>(IStatementVisitor<T> visitor) =>
        throw new InvalidOperationException("A statement of a readings file was taken for one of a panel.");
}

/// <summary>Of which panel the readings are: <c>readings of "lever.panel"</c>; the path is null for an unknown unit.</summary>
public sealed record ReadingsOfSyntax(WordSyntax Keyword, WordSyntax? Path, TextSpan Span) : ReadingsStatement(Keyword, Span);

/// <summary>What lies on the bench: <c>unit J1</c>, <c>harness</c>, <c>mated</c>.</summary>
public sealed record SideSyntax(WordSyntax Keyword, WordSyntax? Part, TextSpan Span) : ReadingsStatement(Keyword, Span);

/// <summary>The meter, or its leads: <c>meter "pocket meter" range 4 Mohm</c>, <c>leads 0.3 ohm zeroed</c>.</summary>
public sealed record MeterSyntax(WordSyntax Keyword, WordSyntax? Name, ImmutableArray<ClauseSyntax> Clauses, TextSpan Span)
    : ReadingsStatement(Keyword, Span);

/// <summary>A remark, or the print of the panel that was measured.</summary>
public sealed record RemarkSyntax(WordSyntax Keyword, WordSyntax Text, TextSpan Span) : ReadingsStatement(Keyword, Span);

/// <summary>The readings taken while actuators are held: <c>at LEVER reverse, GRIP left-stop { ... }</c>.</summary>
/// <param name="Keyword">The word <c>at</c>.</param>
/// <param name="Held">The actuators that are not at rest; none for <c>at rest</c>.</param>
/// <param name="Lines">The readings.</param>
/// <param name="Span">The whole block.</param>
public sealed record HeldSyntax(
    WordSyntax Keyword, ImmutableArray<HeldPlaceSyntax> Held, ImmutableArray<ReadingSyntax> Lines, TextSpan Span)
    : ReadingsStatement(Keyword, Span);

/// <summary>An actuator and where it is held; with a second position, on the way between the two.</summary>
public sealed record HeldPlaceSyntax(WordSyntax Actuator, WordSyntax Position, WordSyntax? Other);

/// <summary>One reading.</summary>
/// <param name="Red">Under the red lead; without a joining word both contacts of the pair.</param>
/// <param name="Joined"><c>to</c>, an arrow, or empty where the line names a pair alone.</param>
/// <param name="Black">Under the black lead; empty for a pair.</param>
/// <param name="Value">A quantity, a range of one where something was turned, or the word open, closed or a question mark.</param>
/// <param name="Test">The word diode or turned, or null.</param>
/// <param name="Seen">What the eye or ear told besides: lamp, coil and so on; or null.</param>
/// <param name="Remark">A remark, or null.</param>
/// <param name="Span">The line.</param>
public sealed record ReadingSyntax(
    ImmutableArray<ContactSyntax> Red, string Joined, ImmutableArray<ContactSyntax> Black, ValueSyntax Value, WordSyntax? Test,
    WordSyntax? Seen, WordSyntax? Remark, TextSpan Span)
{
    /// <summary>How the meter was set; a range of ohms says by itself that something was turned.</summary>
    public MeterTest Meter => Test?.Text == "diode" ? MeterTest.Diode : Test is not null || Value is QuantityRangeSyntax ? MeterTest.Turned : MeterTest.Ohms;
}
