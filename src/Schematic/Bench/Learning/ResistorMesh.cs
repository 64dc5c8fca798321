namespace Schematic.Bench.Learning;

/// <summary>
/// The resistors of a network from what is read between each two of its nodes. The matrix of readings, its rows and columns
/// centred, is minus twice the inverse of the matrix of conductances on what is orthogonal to the vector of ones (Klein, Randic
/// 1993, from memory).
/// </summary>
internal static class ResistorMesh
{
    /// <summary>A conductance below this share of the largest at either end comes of inexact readings.</summary>
    private const double LeastShare = 0.08;

    /// <summary>The resistors; none where the readings are those of no such network.</summary>
    /// <param name="ohms">What is read from each node to each other one.</param>
    public static IEnumerable<(int One, int Other, double Ohms)> Of(double[][] ohms)
    {
        var n = ohms.Length;
        if (ohms.Any(row => row.Any(double.IsInfinity))) return [];
        var mean = ohms.Select(row => row.Average()).ToArray();
        var all = mean.Average();
        var matrix = new double[n, n];
        for (var i = 0; i < n; i++)
            for (var j = 0; j < n; j++) matrix[i, j] = (-0.5 * (ohms[i][j] - mean[i] - mean[j] + all)) + (1.0 / n);
        if (Inverse(matrix, n) is not { } inverse) return [];
        var siemens = new double[n, n];
        for (var i = 0; i < n; i++)
            for (var j = 0; j < n; j++) siemens[i, j] = i == j ? 0 : (1.0 / n) - inverse[i, j];
        var largest = Enumerable.Range(0, n).Select(i => Enumerable.Range(0, n).Max(j => siemens[i, j])).ToArray();
        return from i in Enumerable.Range(0, n)
               from j in Enumerable.Range(i + 1, n - i - 1)
               where siemens[i, j] > LeastShare * Math.Min(largest[i], largest[j])
               select (i, j, 1 / siemens[i, j]);
    }

    /// <summary>The inverse by elimination with pivots; null of a singular matrix.</summary>
    private static double[,]? Inverse(double[,] matrix, int n)
    {
        var (left, right) = ((double[,])matrix.Clone(), new double[n, n]);
        for (var i = 0; i < n; i++) right[i, i] = 1;
        for (var column = 0; column < n; column++)
        {
            var pivot = Enumerable.Range(column, n - column).MaxBy(row => Math.Abs(left[row, column]));
            if (Math.Abs(left[pivot, column]) < 1e-12) return null;
            for (var k = 0; k < n; k++)
            {
                (left[column, k], left[pivot, k]) = (left[pivot, k], left[column, k]);
                (right[column, k], right[pivot, k]) = (right[pivot, k], right[column, k]);
            }

            var scale = left[column, column];
            for (var k = 0; k < n; k++)
            {
                left[column, k] /= scale;
                right[column, k] /= scale;
            }

            for (var row = 0; row < n; row++)
            {
                var factor = left[row, column];
                if (row == column || factor == 0) continue;
                for (var k = 0; k < n; k++)
                {
                    left[row, k] -= factor * left[column, k];
                    right[row, k] -= factor * right[column, k];
                }
            }
        }

        return right;
    }
}
