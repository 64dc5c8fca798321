using System.Globalization;

namespace Schematic.Benchmarks;

/// <summary>Reads the edges of Graphviz's plain output and counts crossings and bends as the sheet inspector does.</summary>
internal static class PlainRoutes
{
    private const double Same = 1e-4;

    /// <summary>The corner points of every edge: every third control point of its chain of curves, straight runs joined.</summary>
    public static List<List<(double X, double Y)>> Read(string plain) =>
        [.. plain.Split('\n').Where(l => l.StartsWith("edge ", StringComparison.Ordinal)).Select(Corners)];

    /// <summary>How many corners there are.</summary>
    public static int Bends(List<List<(double X, double Y)>> routes) => routes.Sum(r => Math.Max(0, r.Count - 2));

    /// <summary>How often pieces of two edges cross inside both.</summary>
    public static int Crossings(List<List<(double X, double Y)>> routes)
    {
        var count = 0;
        for (var i = 0; i < routes.Count; i++)
        {
            for (var j = i + 1; j < routes.Count; j++) count += Crossings(routes[i], routes[j]);
        }

        return count;
    }

    private static int Crossings(List<(double X, double Y)> a, List<(double X, double Y)> b)
    {
        var count = 0;
        for (var i = 1; i < a.Count; i++)
        {
            for (var j = 1; j < b.Count; j++)
            {
                if (Cross(a[i - 1], a[i], b[j - 1], b[j])) count++;
            }
        }

        return count;
    }

    private static bool Cross((double X, double Y) p, (double X, double Y) q, (double X, double Y) r, (double X, double Y) s) =>
        Side(p, q, r) * Side(p, q, s) < -Same && Side(r, s, p) * Side(r, s, q) < -Same;

    private static double Side((double X, double Y) p, (double X, double Y) q, (double X, double Y) t) =>
        ((q.X - p.X) * (t.Y - p.Y)) - ((q.Y - p.Y) * (t.X - p.X));

    private static List<(double X, double Y)> Corners(string line)
    {
        var words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var n = int.Parse(words[3], CultureInfo.InvariantCulture);
        var corners = new List<(double X, double Y)>();
        for (var k = 0; k < n; k += 3)
        {
            var point = (Number(words[4 + (2 * k)]), Number(words[5 + (2 * k)]));
            if (corners.Count >= 2 && Math.Abs(Side(corners[^2], corners[^1], point)) < Same) corners[^1] = point;
            else corners.Add(point);
        }

        return corners;
    }

    private static double Number(string word) => double.Parse(word, CultureInfo.InvariantCulture);
}
