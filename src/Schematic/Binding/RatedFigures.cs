using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>
/// What a statement says of volts, amperes, ohms and watts of one device, and what follows from two of them. What is not known
/// stays null.
/// </summary>
/// <param name="Volts">Rated volts.</param>
/// <param name="Amps">Amperes at these volts.</param>
/// <param name="Ohms">Resistance.</param>
/// <param name="Reckoned">What of it was reckoned.</param>
internal sealed record RatedFigures(double? Volts, double? Amps, double? Ohms, Reckoned Reckoned)
{
    /// <summary>Reads the ratings of a statement.</summary>
    public static RatedFigures Of(IReadOnlyDictionary<Dimension, QuantitySyntax> ratings)
    {
        double? Stated(Dimension dimension) => ratings.TryGetValue(dimension, out var quantity) && quantity.Value > 0 ? quantity.Value : null;
        var (volts, amps, ohms, watts) = (Stated(Dimension.Voltage), Stated(Dimension.Current), Stated(Dimension.Resistance), Stated(Dimension.Power));
        var reckoned = Reckoned.None;
        if (volts is null && (amps * ohms ?? watts / amps ?? Root(watts * ohms)) is { } reckonedVolts) (volts, reckoned) = (reckonedVolts, reckoned | Reckoned.Volts);
        if (amps is null && (volts / ohms ?? watts / volts) is { } reckonedAmps) (amps, reckoned) = (reckonedAmps, reckoned | Reckoned.Amps);
        return new RatedFigures(volts, amps, ohms ?? volts / amps, reckoned);
    }

    private static double? Root(double? square) => square is { } value ? Math.Sqrt(value) : null;
}
