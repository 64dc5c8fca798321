using System.Collections.Immutable;

namespace Schematic.Bench.Diagnosis;

/// <summary>What the person with the leads may have done wrong.</summary>
public enum MistakeKind
{
    /// <summary>The face was read from its other side, or counted the other way round.</summary>
    Mirrored,

    /// <summary>Counting began at another contact, ring or corner.</summary>
    WrongStart,

    /// <summary>The connector was held turned.</summary>
    Turned,

    /// <summary>A run of contacts was counted one too many or one too few.</summary>
    Shifted,

    /// <summary>An actuator did not stand where it was noted.</summary>
    NotAtStop,

    /// <summary>Positions were named the wrong way.</summary>
    NamedWrong,

    /// <summary>The leads are in the readings though they were noted as taken off.</summary>
    NotZeroed,

    /// <summary>Figures were noted with another unit than the meter showed: kohm for ohm.</summary>
    WrongUnit,
}

/// <summary>One mistake of the person, as what was really measured when something was noted.</summary>
/// <param name="Kind">What went wrong.</param>
/// <param name="Chance">How likely it is beforehand, against none: judgement, no source.</param>
/// <param name="Words">The mistake in words.</param>
public sealed record Mistake(MistakeKind Kind, double Chance, string Words)
{
    /// <summary>For each terminal of the circuit the one that the lead was really on; empty where contacts were right.</summary>
    public ImmutableArray<int> Contacts { get; init; } = [];

    /// <summary>The actuator that stood elsewhere, or -1.</summary>
    public int Actuator { get; init; } = -1;

    /// <summary>Whether it stood where a spring took it.</summary>
    public bool IsSprung { get; init; }

    /// <summary>For each place of that actuator the one where it really stood.</summary>
    public ImmutableArray<int> Places { get; init; } = [];

    /// <summary>What the leads add to every resistance, in ohms.</summary>
    public double LeadOhms { get; init; }

    /// <summary>How many times too large every figure in ohms was noted.</summary>
    public double Factor { get; init; } = 1;

    /// <summary>What is noted when the meter shows this.</summary>
    public Reading Noted(Reading shown) => Factor == 1 || shown.Kind != ReadingKind.Ohms ? shown : shown with
    {
        Value = shown.Value * Factor,
        Least = shown.Least * Factor,
        Most = shown.Most * Factor,
        Lowest = shown.Lowest is { } low ? (low.Value * Factor, low.Least * Factor, low.Most * Factor) : null,
    };

    /// <summary>The placement that was really made when this one was noted.</summary>
    public Placement Real(Placement noted) => noted with
    {
        Stand = RealStand(noted.Stand),
        Red = RealContacts(noted.Red),
        Black = RealContacts(noted.Black),
    };

    /// <summary>Where the actuators really stood.</summary>
    public Stand RealStand(Stand noted) => Actuator < 0 ? noted : noted.With(Actuator, Places[noted.Places[Actuator]]);

    /// <summary>The contacts that the leads were really on.</summary>
    public ImmutableArray<int> RealContacts(ImmutableArray<int> noted) => Contacts.IsEmpty ? noted : [.. noted.Select(t => Contacts[t])];
}
