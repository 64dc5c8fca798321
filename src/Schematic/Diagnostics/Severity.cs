namespace Schematic.Diagnostics;

/// <summary>How much a finding matters.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing is wrong.</summary>
    Note,

    /// <summary>Probably wrong, or wrong by the habits of the trade; drawing goes on.</summary>
    Warning,

    /// <summary>Wrong: the drawing would mislead whoever builds from it.</summary>
    Error,
}
