namespace Schematic.Drawing;

/// <summary>What a sheet of the pack shows, in the order of the pack.</summary>
public enum SheetKind
{
    /// <summary>Open findings, list of the sheets, and where everything is drawn.</summary>
    Index,

    /// <summary>Circuit diagram: how it works.</summary>
    Circuit,

    /// <summary>Wiring diagram: where each wire goes.</summary>
    Wiring,

    /// <summary>Connector faces, enlarged.</summary>
    Faces,

    /// <summary>Connector faces and cut-outs at true size.</summary>
    TrueSize,

    /// <summary>Lists that flow on together.</summary>
    Lists,

    /// <summary>Ring-out sheet.</summary>
    RingOut,

    /// <summary>What was measured, by whom, and what of it is still open.</summary>
    BenchRecord,
}
