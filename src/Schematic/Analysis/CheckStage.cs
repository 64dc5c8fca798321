namespace Schematic.Analysis;

/// <summary>
/// When a check runs. One cause is to give one finding, so a stage is left out when an earlier one has found errors that
/// would echo in it.
/// </summary>
public enum CheckStage
{
    /// <summary>
    /// Finds what is there and must not be: no statement that is missing or could not be read can cause such a finding.
    /// Always run.
    /// </summary>
    Conflicts,

    /// <summary>Finds what is missing. Not run when statements of the file could not be read.</summary>
    Gaps,

    /// <summary>Proves the panel in every position. Not run when anything before gave an error.</summary>
    Positions,

    /// <summary>Currents, voltages, sizes, worst case over all positions. Runs under the same condition as the positions.</summary>
    Quantities,
}
