using System.Collections.Immutable;
using Schematic.Bench.RingOut;
using Schematic.Diagnostics;
using Schematic.Drawing;
using Schematic.Layout.Tables;

namespace Schematic.Layout.Pack;

/// <summary>A drawn pack.</summary>
/// <param name="Sheets">All sheets, framed and numbered.</param>
/// <param name="Findings">What is wrong with the drawing itself; none on a good one.</param>
public sealed record DrawnPack(ImmutableArray<Sheet> Sheets, ImmutableArray<Diagnostic> Findings)
{
    /// <summary>The ring-outs that its lists print.</summary>
    public ImmutableArray<RingOutPlan> RingOuts { get; init; } = [];

    /// <summary>How its lists flow.</summary>
    internal PackWays? Ways { get; init; }
}
