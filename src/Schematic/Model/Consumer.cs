using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// A load that is no lamp and moves no contact: it turns, rings, heats or shows. Its terminals are <c>1</c> and <c>2</c>; those of
/// a meter, which has a right way round, <c>+</c> and <c>-</c>.
/// </summary>
/// <param name="Designator">The reference designator.</param>
/// <param name="Kind">What it does.</param>
/// <param name="RatedVolts">Rated voltage, of a meter the voltage at full scale; null when unknown.</param>
/// <param name="RatedAmps">Current at the rated voltage, or null when unknown.</param>
/// <param name="Span">Where the designator is declared.</param>
public sealed record Consumer(string Designator, ConsumerKind Kind, double? RatedVolts, double? RatedAmps, SourceSpan Span)
    : TwoEndedPart(Designator, Kind == ConsumerKind.Meter ? new TerminalPair("+", "-") : new TerminalPair("1", "2"), Span)
{
    /// <summary>Lowest voltage at which it surely does its work, or null when unknown.</summary>
    public double? OperatesVolts { get; init; }

    /// <summary>Highest voltage it stands, or null when unknown.</summary>
    public double? MaxVolts { get; init; }

    /// <summary>Its resistance in ohms where the file states it, or null.</summary>
    public double? StatedOhms { get; init; }

    /// <summary>Which of its figures was reckoned from the others.</summary>
    public Reckoned Reckoned { get; init; }

    /// <summary>Resistance at the rated point, in ohms, or null when unknown; the winding of a motor that stands still has much less.</summary>
    public double? Ohms => RatedVolts / RatedAmps ?? StatedOhms;

    /// <inheritdoc/>
    public override bool IsRatingUnknown => RatedVolts is null && OperatesVolts is null;

    /// <summary>Whether switching it off gives a pulse: it has a winding.</summary>
    public bool IsInductive => Kind is ConsumerKind.Motor or ConsumerKind.Bell;

    /// <inheritdoc/>
    public override bool IsLoad => true;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}

/// <summary>What a load does.</summary>
public enum ConsumerKind
{
    /// <summary>Turns.</summary>
    Motor,

    /// <summary>Rings.</summary>
    Bell,

    /// <summary>Buzzes.</summary>
    Buzzer,

    /// <summary>Heats.</summary>
    Heater,

    /// <summary>Shows a current on a scale.</summary>
    Meter,
}
