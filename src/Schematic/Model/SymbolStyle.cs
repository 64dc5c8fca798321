namespace Schematic.Model;

/// <summary>Which family of graphic symbols is drawn.</summary>
public enum SymbolStyle
{
    /// <summary>After IEC 60617.</summary>
    Iec,

    /// <summary>After IEEE 315.</summary>
    Ieee,
}
