namespace Schematic.Language;

/// <summary>What a unit measures. Values are kept in the unit that each member names.</summary>
public enum Dimension
{
    /// <summary>No unit was written, or one that the language does not know.</summary>
    Unknown,

    /// <summary>Volts.</summary>
    Voltage,

    /// <summary>Amperes.</summary>
    Current,

    /// <summary>Ohms.</summary>
    Resistance,

    /// <summary>Millimetres.</summary>
    Length,

    /// <summary>Square millimetres.</summary>
    Area,

    /// <summary>American wire gauge number; 2/0 is -1.</summary>
    Gauge,

    /// <summary>Watts.</summary>
    Power,

    /// <summary>Volt-amperes.</summary>
    ApparentPower,

    /// <summary>Farads.</summary>
    Capacitance,

    /// <summary>Seconds.</summary>
    Time,

    /// <summary>Degrees Celsius.</summary>
    Temperature,

    /// <summary>Percent.</summary>
    Percent,
}
