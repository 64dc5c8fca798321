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

    private const double Tolerance = 1e-9;

    /// <summary>Ratings on sale, in amperes (<see cref="Sources.FuseRatings"/>).</summary>
    public static ImmutableArray<double> Ratings { get; } =
        [0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10, 12.5, 16, 20, 25, 32, 40];

    /// <summary>
    /// The smallest rating that carries <paramref name="loadAmps"/> and does not exceed <paramref name="wireAmps"/>, the
    /// capacity of the thinnest wire that the protector has to guard.
    /// </summary>
    /// <param name="loadAmps">The highest steady load.</param>
    /// <param name="wireAmps">What the thinnest wire may carry; infinite where no wire is known.</param>
    /// <param name="fitted">Ratings that are fitted already: the smallest of them that serves is kept, so that one sheet advises one figure.</param>
    public static ProtectorChoice Choose(double loadAmps, double wireAmps, params IEnumerable<double> fitted)
    {
        var least = loadAmps / LoadShare;
        double? chosen = fitted.Order().Concat(Ratings).Where(r => r >= least - Tolerance && r <= wireAmps + Tolerance).Cast<double?>().FirstOrDefault();
        var most = double.IsFinite(wireAmps)
            ? string.Create(CultureInfo.InvariantCulture, $"at most {wireAmps:0.##} A of the thinnest wire ({Sources.ProtectorRule})")
            : "no wire with a gauge to guard";
        var method = string.Create(
            CultureInfo.InvariantCulture,
            $"at least {Math.Round(loadAmps, 3) + 0.0:0.###} A / {LoadShare} = {Math.Round(least, 3) + 0.0:0.###} A (common practice), {most}; {Sources.FuseRatings}");
        return new ProtectorChoice(chosen, least, wireAmps, method);
    }
}
