namespace Schematic.Model;

/// <summary>An output that a semiconductor switches: one way only, with a drop, and with limits that a contact has not.</summary>
public interface ISemiconductorOutput
{
    /// <summary>Collector and emitter: current passes from the first to the second.</summary>
    TerminalPair Output { get; }

    /// <summary>What it drops while it is on, in volts.</summary>
    double SaturationVolts { get; }

    /// <summary>Whether the file states that.</summary>
    bool IsSaturationStated { get; }

    /// <summary>Highest voltage it stands while it is off, or null when unknown.</summary>
    double? MaxVolts { get; }

    /// <summary>Most current that it carries, or null when unknown.</summary>
    double? MaxAmps { get; }
}
