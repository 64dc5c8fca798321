namespace Schematic.Model;

/// <summary>What a logic input reads.</summary>
public enum InputLevel
{
    /// <summary>Low.</summary>
    Low,

    /// <summary>High.</summary>
    High,
}
