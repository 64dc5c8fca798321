using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>When something holds: a statement about actuator positions and coils. Conditions compare by meaning of their parts.</summary>
public abstract record Condition(SourceSpan Span)
{
    /// <summary>The conditions that it is made of and that are made of no others.</summary>
    public abstract IEnumerable<Condition> Leaves();

    /// <summary>Asks for the answer that a visitor has for this kind of condition.</summary>
    public abstract T Accept<T>(IConditionVisitor<T> visitor);
}

/// <summary>The actuator stands in one of the named positions.</summary>
public sealed record PositionCondition(string Actuator, ImmutableArray<string> Positions, SourceSpan Span) : Condition(Span)
{
    /// <inheritdoc/>
    public override IEnumerable<Condition> Leaves() => [this];

    /// <inheritdoc/>
    public override T Accept<T>(IConditionVisitor<T> visitor) => visitor.Visit(this);
}

/// <summary>The actuator stands in one of positions that nobody has traced yet: in each of them it may hold, or not.</summary>
/// <param name="Actuator">The actuator.</param>
/// <param name="Contact">The designator of the switch whose positions they are.</param>
/// <param name="Span">Where it is written.</param>
public sealed record UntracedCondition(string Actuator, string Contact, SourceSpan Span) : Condition(Span)
{
    /// <summary>What it is not known of, in one position: the name of a fact.</summary>
    public string NameAt(string position) => $"{Contact} at {position}";

    /// <inheritdoc/>
    public override IEnumerable<Condition> Leaves() => [this];

    /// <inheritdoc/>
    public override T Accept<T>(IConditionVisitor<T> visitor) => visitor.Visit(this);
}

/// <summary>A relay, solenoid, lamp or LED is energised, or is not.</summary>
public sealed record EnergisedCondition(string Part, bool Energised, SourceSpan Span) : Condition(Span)
{
    /// <inheritdoc/>
    public override IEnumerable<Condition> Leaves() => [this];

    /// <inheritdoc/>
    public override T Accept<T>(IConditionVisitor<T> visitor) => visitor.Visit(this);
}

/// <summary>The delayed contacts of a time-delay relay stand operated, or do not; its coil may stand otherwise for the time of the delay.</summary>
public sealed record DelayedCondition(string Relay, bool Operated, SourceSpan Span) : Condition(Span)
{
    /// <summary>The word of the language for delayed contacts that stand operated.</summary>
    public const string OperatedWord = "delayed-operated";

    /// <summary>The word for delayed contacts that stand released.</summary>
    public const string ReleasedWord = "delayed-released";

    /// <summary>How they stand, as the language says it.</summary>
    public string Word => Operated ? OperatedWord : ReleasedWord;

    /// <inheritdoc/>
    public override IEnumerable<Condition> Leaves() => [this];

    /// <inheritdoc/>
    public override T Accept<T>(IConditionVisitor<T> visitor) => visitor.Visit(this);
}

/// <summary>A supply is switched on, or is not.</summary>
public sealed record SupplyCondition(string Supply, bool On, SourceSpan Span) : Condition(Span)
{
    /// <inheritdoc/>
    public override IEnumerable<Condition> Leaves() => [this];

    /// <inheritdoc/>
    public override T Accept<T>(IConditionVisitor<T> visitor) => visitor.Visit(this);
}

/// <summary>All parts hold; no parts means always.</summary>
public sealed record AllCondition(ImmutableArray<Condition> Parts, SourceSpan Span) : Condition(Span)
{
    /// <inheritdoc/>
    public override IEnumerable<Condition> Leaves() => Parts.SelectMany(p => p.Leaves());

    /// <inheritdoc/>
    public override T Accept<T>(IConditionVisitor<T> visitor) => visitor.Visit(this);
}

/// <summary>At least one part holds; no parts means never.</summary>
public sealed record AnyCondition(ImmutableArray<Condition> Parts, SourceSpan Span) : Condition(Span)
{
    /// <inheritdoc/>
    public override IEnumerable<Condition> Leaves() => Parts.SelectMany(p => p.Leaves());

    /// <inheritdoc/>
    public override T Accept<T>(IConditionVisitor<T> visitor) => visitor.Visit(this);
}
