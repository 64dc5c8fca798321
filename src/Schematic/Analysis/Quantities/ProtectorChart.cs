using System.Collections.Immutable;

namespace Schematic.Analysis.Quantities;

/// <summary>
/// Table 11-3 of FAA AC 43.13-1B: the largest breaker and fuse for a wire. Values and order read; that numbers 1 and 0 have
/// no breaker is from memory, and so is the basis (bundles at 135 °F up to 30,000 ft). The breaker column exceeds the bundle
/// amperes of table 11-9: another basis, so a check that uses this chart says so.
/// </summary>
public static class ProtectorChart
{
    private static readonly ImmutableArray<(int Awg, double? Breaker, double Fuse)> Rows =
    [
        (22, 5, 5), (20, 7.5, 5), (18, 10, 10), (16, 15, 10), (14, 20, 15), (12, 30, 20), (10, 40, 30), (8, 50, 50),
        (6, 80, 70), (4, 100, 70), (2, 125, 100), (1, null, 150), (0, null, 150),
    ];

    /// <summary>The largest breaker for that wire in amperes, or null where the chart has none.</summary>
    public static double? BreakerAmps(int awg) => Rows.FirstOrDefault(r => r.Awg == awg).Breaker;

    /// <summary>The largest fuse for that wire in amperes, or null where the chart has none.</summary>
    public static double? FuseAmps(int awg) => Rows.Any(r => r.Awg == awg) ? Rows.First(r => r.Awg == awg).Fuse : null;
}
