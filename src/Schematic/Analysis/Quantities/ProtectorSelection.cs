using System.Collections.Immutable;
using System.Globalization;

namespace Schematic.Analysis.Quantities;

/// <summary>
/// Chooses a fuse or breaker: large enough for the steady load, small enough that it opens before the thinnest wire
/// behind it carries more than it may (<see cref="Sources.ProtectorRule"/>).
/// </summary>
public static class ProtectorSelection
{
    /// <summary>A fuse is loaded to three quarters of its rating at most: common practice, no source.</summary>
    public const double LoadShare = 0.75;

    /// <summary>Ratings on sale, in amperes (<see cref="Sources.FuseRatings"/>).</summary>
    public static ImmutableArray<double> Ratings { get; } =
        [0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10, 12.5, 16, 20, 25, 32, 40];

    /// <summary>
    /// The smallest rating that carries <paramref name="loadAmps"/> and does not exceed <paramref name="wireAmps"/>, the
    /// capacity of the thinnest wire that the protector has to guard.
    /// </summary>
    public static ProtectorChoice Choose(double loadAmps, double wireAmps)
    {
        var least = loadAmps / LoadShare;
        double? chosen = Ratings.Where(r => r >= least - 1e-9 && r <= wireAmps + 1e-9).Cast<double?>().FirstOrDefault();
        var method = string.Create(
            CultureInfo.InvariantCulture,
            $"at least {loadAmps:0.###} A / {LoadShare} = {least:0.###} A (common practice), at most {wireAmps:0.##} A of the thinnest wire ({Sources.ProtectorRule}); {Sources.FuseRatings}");
        return new ProtectorChoice(chosen, least, wireAmps, method);
    }
}
