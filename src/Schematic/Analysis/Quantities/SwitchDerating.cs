namespace Schematic.Analysis.Quantities;

/// <summary>
/// Table 11-4 of FAA AC 43.13-1B (read): a switch's resistive rating must be the steady load times a factor of the load's
/// kind. These are factors for a long life, less than the raw inrush.
/// </summary>
public static class SwitchDerating
{
    /// <summary>
    /// Silver contacts should not switch less than this current or than <see cref="LeastVolts"/> unless rated for it: the
    /// low-energy rule of the same paragraph (read).
    /// </summary>
    public const double LeastAmps = 0.5;

    /// <summary>See <see cref="LeastAmps"/>.</summary>
    public const double LeastVolts = 8;

    /// <summary>
    /// The factor at a voltage: the 28 V column above 20 V (midway between the columns, our choice), else the 12 V column.
    /// </summary>
    public static double Factor(SwitchLoadKind kind, double volts) => (kind, volts > 20) switch
    {
        (SwitchLoadKind.Lamp, true) => 8,
        (SwitchLoadKind.Lamp, false) => 5,
        (SwitchLoadKind.Inductive, true) => 4,
        (SwitchLoadKind.Inductive, false) => 2,
        (SwitchLoadKind.Motor, true) => 3,
        (SwitchLoadKind.Motor, false) => 2,
        (_, true) => 2,
        (_, false) => 1,
    };

    /// <summary>
    /// The rating a contact needs for several loads at once, in amperes: the sum over the loads of current times factor.
    /// The table has no mixed case; adding is our choice.
    /// </summary>
    public static double RequiredAmps(double volts, IEnumerable<(SwitchLoadKind Kind, double Amps)> loads) =>
        loads.Sum(l => Factor(l.Kind, volts) * l.Amps);

    /// <summary>The steady current that a contact of that rating may switch: rating / factor (note 2, from memory).</summary>
    public static double AllowedAmps(double ratedAmps, SwitchLoadKind kind, double volts) => ratedAmps / Factor(kind, volts);
}
