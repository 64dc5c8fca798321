namespace Schematic.Model;

/// <summary>The electrical data of a coil: two of volts, amperes and ohms give the third.</summary>
/// <param name="RatedVolts">Nominal voltage.</param>
/// <param name="Ohms">Winding resistance at 20 degrees Celsius.</param>
public sealed record CoilData(double RatedVolts, double Ohms)
{
    /// <summary>
    /// Whether the file states a rated voltage. Of a coil that was only measured it does not: <see cref="RatedVolts"/> is then zero
    /// and means nothing.
    /// </summary>
    public bool IsRatingKnown { get; init; } = true;

    /// <summary>Lowest voltage at which it surely operates, or null when unknown.</summary>
    public double? OperatesVolts { get; init; }

    /// <summary>Voltage below which it surely releases, or null when unknown.</summary>
    public double? ReleasesVolts { get; init; }

    /// <summary>Highest voltage it stands, or null when unknown.</summary>
    public double? MaxVolts { get; init; }

    /// <summary>Whether the part carries its own suppression, so that no diode is asked for.</summary>
    public bool HasSuppression { get; init; }

    /// <summary>Current at the rated voltage, in amperes.</summary>
    public double RatedAmps => RatedVolts / Ohms;
}
