namespace Schematic.Analysis.Electrical;

/// <summary>How a branch behaves.</summary>
public enum BranchKind
{
    /// <summary>A resistance, perhaps with a fixed voltage in series.</summary>
    Linear,

    /// <summary>Blocks below its knee voltage, a resistance beyond it.</summary>
    OneWay,

    /// <summary>A voltage behind a resistance that gives no more than its limit.</summary>
    Source,
}
