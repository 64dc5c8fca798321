namespace Schematic.Drawing;

/// <summary>What a sheet of the pack shows, in the order of the pack.</summary>
public enum SheetKind
{
    /// <summary>List of the sheets.</summary>
    Index,

    /// <summary>Circuit diagram: how it works.</summary>
    Circuit,

    /// <summary>Wiring diagram: where each wire goes.</summary>
    Wiring,

    /// <summary>Connector faces, enlarged.</summary>
    Faces,

    /// <summary>Connector faces and cut-outs at true size.</summary>
    TrueSize,

    /// <summary>Contact chart.</summary>
    ContactChart,

    /// <summary>Wire list.</summary>
    WireList,

    /// <summary>Work list: what to solder in which order.</summary>
    WorkList,

    /// <summary>Load sheet.</summary>
    LoadSheet,

    /// <summary>Parts list.</summary>
    PartsList,

    /// <summary>Signal list.</summary>
    SignalList,

    /// <summary>Labels at true size.</summary>
    Labels,

    /// <summary>Ring-out sheet.</summary>
    RingOut,

    /// <summary>Findings of the check.</summary>
    Findings,
}
