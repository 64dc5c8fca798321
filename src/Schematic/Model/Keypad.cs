using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// A keypad without electronics: each key joins the line of its row to the line of its column while it is pressed. Its terminals are
/// <c>R1</c>, <c>R2</c> … and <c>C1</c>, <c>C2</c> …
/// </summary>
/// <param name="Designator">The reference designator.</param>
/// <param name="Keys">The keys, row by row.</param>
/// <param name="Span">Where the designator is declared.</param>
public sealed record Keypad(string Designator, ImmutableArray<KeypadKey> Keys, SourceSpan Span) : Part(Designator, Span)
{
    /// <summary>The position in which a key is let go.</summary>
    public const string Released = "released";

    /// <summary>The position in which a key is pressed.</summary>
    public const string Pressed = "pressed";

    /// <summary>The row terminals.</summary>
    public ImmutableArray<string> Rows => [.. Keys.Select(k => k.Row).Distinct()];

    /// <summary>The column terminals.</summary>
    public ImmutableArray<string> Columns => [.. Keys.Select(k => k.Column).Distinct().Order(NaturalOrder.Comparer)];

    /// <summary>Its keys as what hands move: each is pressed by itself, and several may be held.</summary>
    public IEnumerable<Actuator> Hands => Keys.Select(k => new Actuator(
        k.ActuatorOn(Designator),
        [new ActuatorPosition(Released, true, null, k.Span), new ActuatorPosition(Pressed, false, Released, k.Span)], k.Span)
    {
        Operator = OperatorKind.Button, Keypad = Designator,
    });

    /// <summary>The keys on a row or a column, by name.</summary>
    public IEnumerable<string> KeysOn(string terminal) => Keys.Where(k => k.Row == terminal || k.Column == terminal).Select(k => k.Name);

    /// <inheritdoc/>
    public override ImmutableArray<Pole> ContactSets =>
    [
        .. Keys.Select(k => new Pole(
            k.Row, [new Throw(k.Column, k.Name, new PositionCondition(k.ActuatorOn(Designator), [Pressed], k.Span), k.Span)], k.Span)),
    ];

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

/// <summary>One key of a keypad.</summary>
/// <param name="Name">What is printed on it.</param>
/// <param name="Row">The terminal of its row.</param>
/// <param name="Column">The terminal of its column.</param>
/// <param name="Span">Where it is declared.</param>
public sealed record KeypadKey(string Name, string Row, string Column, SourceSpan Span)
{
    /// <summary>What the language calls it as something that moves: the keypad, a hyphen, the key.</summary>
    public string ActuatorOn(string keypad) => $"{keypad}-{Name}";
}
