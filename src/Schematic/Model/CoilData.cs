namespace Schematic.Model;

/// <summary>The electrical data of a coil: two of volts, amperes and ohms give the third; what nobody knows is null.</summary>
/// <param name="RatedVolts">Nominal voltage, or null when unknown.</param>
/// <param name="Ohms">Winding resistance at 20 degrees Celsius, or null when unknown.</param>
public sealed record CoilData(double? RatedVolts, double? Ohms)
{
    /// <summary>Current at the rated voltage in amperes where the file states it, or null.</summary>
    public double? StatedAmps { get; init; }

    /// <summary>Which of its figures was reckoned from the others.</summary>
    public Reckoned Reckoned { get; init; }

    /// <summary>Lowest voltage at which it surely operates, or null when unknown.</summary>
    public double? OperatesVolts { get; init; }

    /// <summary>Voltage below which it surely releases, or null when unknown.</summary>
    public double? ReleasesVolts { get; init; }

    /// <summary>Highest voltage it stands, or null when unknown.</summary>
    public double? MaxVolts { get; init; }

    /// <summary>Whether the part carries its own suppression, so that no diode is asked for.</summary>
    public bool HasSuppression { get; init; }

    /// <summary>Current at the rated voltage, in amperes, or null when unknown.</summary>
    public double? RatedAmps => StatedAmps ?? RatedVolts / Ohms;

    /// <summary>Whether nobody can tell yet from which voltage it works.</summary>
    public bool IsRatingUnknown => RatedVolts is null && OperatesVolts is null;
}
