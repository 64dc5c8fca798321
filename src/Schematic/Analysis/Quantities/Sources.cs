namespace Schematic.Analysis.Quantities;

/// <summary>
/// The documents that figures were taken from, worded as they are printed under tables. "FAA" is Advisory Circular
/// 43.13-1B CHG 1 (2001-09-27), chapter 11, whose tables and text were read unless "from memory" is added.
/// </summary>
public static class Sources
{
    /// <summary>Circuit protector chart. Values and their order read; which sizes stay blank for breakers from memory.</summary>
    public const string ProtectorChart = "FAA AC 43.13-1B table 11-3";

    /// <summary>Switch derating factors, read.</summary>
    public const string SwitchDerating = "FAA AC 43.13-1B table 11-4";

    /// <summary>Allowable voltage drop. 28 V continuous read second-hand; the others from memory, in agreement with tables 11-7 and 11-8.</summary>
    public const string AllowableDrop = "FAA AC 43.13-1B table 11-6";

    /// <summary>Bundle currents, resistance and circular mils of tin-plated stranded wire, read.</summary>
    public const string WireTable = "FAA AC 43.13-1B table 11-9";

    /// <summary>Resistance and temperature of copper: 254.5 / (234.5 + T), read.</summary>
    public const string CopperTemperature = "FAA AC 43.13-1B paragraph 11-66d";

    /// <summary>A protector opens before the wire's rating is exceeded, read.</summary>
    public const string ProtectorRule = "FAA AC 43.13-1B paragraph 11-48";

    /// <summary>Wire marks at both ends and every 15 inches, read.</summary>
    public const string WireMarks = "FAA AC 43.13-1B paragraph 11-208, figure 11-23";

    /// <summary>Spare contacts, read.</summary>
    public const string Spares = "FAA AC 43.13-1B paragraph 11-234";

    /// <summary>Single wire in free air, older aircraft tables repeated in handbooks: second-hand; 57 degrees ambient and 105 degrees wire from memory.</summary>
    public const string SingleWire = "older aircraft wire tables, single wire in free air (second-hand)";

    /// <summary>Factors for circuits that lie together, from memory.</summary>
    public const string Grouping = "IEC 60364-5-52 table B.52.17, bunched (from memory)";

    /// <summary>Class 5 tinned conductors, two secondary tables that agree.</summary>
    public const string MetricConductors = "IEC 60228 class 5, tinned, highest resistance at 20 °C";

    /// <summary>The small sizes that IEC 60228 leaves out, a secondary table.</summary>
    public const string SmallMetricConductors = "DIN VDE 0295, class 5, tinned, highest resistance at 20 °C";

    /// <summary>Diameters of the American wire gauge.</summary>
    public const string AmericanGauge = "ASTM B258";

    /// <summary>Resistivity of copper, 1/58 ohm square millimetre per metre.</summary>
    public const string Copper = "IEC 60028 (1/58 ohm mm²/m)";

    /// <summary>Lamp at another than its own voltage.</summary>
    public const string LampRerating = "Standard Handbook for Electrical Engineers, 11th edition, page 22-8 (second-hand)";

    /// <summary>Cold lamp resistance and inrush.</summary>
    public const string LampInrush = "small panel lamps: cold about a tenth of hot (a driver maker's paper); switch makers ask for 10 x the steady current";

    /// <summary>The preferred values of resistors, two listings that agree.</summary>
    public const string PreferredValues = "IEC 60063, E24";

    /// <summary>Extra-low voltage.</summary>
    public const string ExtraLowVoltage = "IEC 61140: 50 V AC, 120 V ripple-free DC";

    /// <summary>Fuse ratings in steps of ten a decade, from memory.</summary>
    public const string FuseRatings = "IEC 60127 ratings in steps of R10 (from memory)";
}
