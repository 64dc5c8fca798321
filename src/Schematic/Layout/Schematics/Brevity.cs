namespace Schematic.Layout.Schematics;

/// <summary>How much the labels of a sheet say: what a narrow sheet has no room for stands in the wire list.</summary>
internal enum Brevity
{
    /// <summary>Wire numbers with colour and gauge; references with terminal, sheet and zone.</summary>
    Full,

    /// <summary>As full, but nets that have wires go without their names.</summary>
    Wires,

    /// <summary>Wire numbers alone.</summary>
    Numbers,

    /// <summary>Wire numbers alone; references with sheet and zone alone.</summary>
    Least,
}
