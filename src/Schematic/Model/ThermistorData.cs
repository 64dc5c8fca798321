namespace Schematic.Model;

/// <summary>
/// A thermistor whose resistance falls with temperature, by its resistance at 25 degrees Celsius and its B value. The relation with
/// these two, R = R25 exp(B (1/T - 1/298.15 K)), is that of the makers' data books (from memory); it holds within some parts in a
/// hundred over a hundred degrees.
/// </summary>
/// <param name="OhmsAt25">Resistance at 25 degrees Celsius.</param>
/// <param name="BetaKelvin">The B value in kelvin.</param>
/// <param name="LeastCelsius">The lowest temperature it is to work at.</param>
/// <param name="MostCelsius">The highest.</param>
public sealed record ThermistorData(double OhmsAt25, double BetaKelvin, double LeastCelsius, double MostCelsius)
{
    private const double ZeroCelsius = 273.15;

    /// <summary>Its resistance at a temperature, in ohms.</summary>
    public double OhmsAt(double celsius) =>
        OhmsAt25 * Math.Exp(BetaKelvin * ((1 / (celsius + ZeroCelsius)) - (1 / (25 + ZeroCelsius))));
}
