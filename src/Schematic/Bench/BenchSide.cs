namespace Schematic.Bench;

/// <summary>What lies on the bench and is measured.</summary>
public enum BenchSide
{
    /// <summary>The salvaged unit alone, through the contacts of its connectors; nothing is plugged in.</summary>
    Unit,

    /// <summary>The harness alone: wires, strips and new parts, plugged into nothing; supplies and boards taken off.</summary>
    Harness,

    /// <summary>All of it plugged together, measured where wires end; supplies and boards taken off.</summary>
    Mated,
}
