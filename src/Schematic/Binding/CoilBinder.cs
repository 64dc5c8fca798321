using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Reads the data of a coil: two of voltage, current and resistance give the third.</summary>
internal static class CoilBinder
{
    /// <summary>Builds one.</summary>
    public static CoilData Make(DeviceStatement device)
    {
        var ratings = device.Ratings(
            "a voltage, a current or a resistance", Dimension.Voltage, Dimension.Current, Dimension.Resistance);
        if (ratings.Count == 3)
        {
            var resistance = ratings[Dimension.Resistance];
            device.Report.Contradiction(
                device.Scope.At(resistance.Span), "Voltage, current and resistance of the coil are all given.",
                "Give two of them; they give the third.", device.Scope.At(ratings[Dimension.Current].Span));
        }

        var figures = RatedFigures.Of(ratings);
        return new CoilData(figures.Volts, figures.Ohms)
        {
            StatedAmps = figures.Reckoned.HasFlag(Reckoned.Amps) ? null : figures.Amps,
            Reckoned = figures.Reckoned,
            OperatesVolts = device.Reader.Quantity("operates", Dimension.Voltage, "a voltage"),
            ReleasesVolts = device.Reader.Quantity("releases", Dimension.Voltage, "a voltage"),
            MaxVolts = device.Reader.Quantity("max", Dimension.Voltage, "a voltage"),
            HasSuppression = device.Reader.Has("suppressed"),
        };
    }
}
