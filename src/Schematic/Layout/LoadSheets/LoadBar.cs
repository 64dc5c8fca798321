namespace Schematic.Layout.LoadSheets;

/// <summary>One bar of use against limit.</summary>
/// <param name="Name">What it is of.</param>
/// <param name="Parts">What makes up the use, each with its name, in the unit of the limit.</param>
/// <param name="Limit">The limit; the bar's full length.</param>
/// <param name="Words">The figures in words, printed at the end of the bar.</param>
internal sealed record LoadBar(string Name, IReadOnlyList<(string Name, double Value)> Parts, double Limit, string Words)
{
    /// <summary>Use as a share of the limit.</summary>
    public double Share => Parts.Sum(p => p.Value) / Limit;
}
