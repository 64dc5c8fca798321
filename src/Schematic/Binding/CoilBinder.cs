using System.Collections.Immutable;
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

        var (volts, ohms) = TwoOfThree(device, ratings);
        return new CoilData(volts, ohms)
        {
            IsRatingKnown = !IsOnlyMeasured(ratings),
            OperatesVolts = device.Reader.Quantity("operates", Dimension.Voltage, "a voltage"),
            ReleasesVolts = device.Reader.Quantity("releases", Dimension.Voltage, "a voltage"),
            MaxVolts = device.Reader.Quantity("max", Dimension.Voltage, "a voltage"),
            HasSuppression = device.Reader.Has("suppressed"),
        };
    }

    /// <summary>Whether its resistance is all that is known of it: what a meter says of a coil without a label.</summary>
    private static bool IsOnlyMeasured(Dictionary<Dimension, QuantitySyntax> ratings) =>
        ratings.Count == 1 && ratings.TryGetValue(Dimension.Resistance, out var ohms) && ohms.Value > 0;

    private static (double Volts, double Ohms) TwoOfThree(DeviceStatement device, Dictionary<Dimension, QuantitySyntax> ratings)
    {
        var volts = ratings.GetValueOrDefault(Dimension.Voltage)?.Value;
        var amps = ratings.GetValueOrDefault(Dimension.Current)?.Value;
        var ohms = ratings.GetValueOrDefault(Dimension.Resistance)?.Value;
        if (volts is null && amps is not null && ohms is not null) return (amps.Value * ohms.Value, ohms.Value);
        if (IsOnlyMeasured(ratings)) return (0, ohms!.Value);
        volts ??= device.Need(ratings, Dimension.Voltage, "28 V");
        if (ohms is not null) return (volts.Value, ohms.Value);
        amps ??= device.Need(ratings, Dimension.Current, "0.7 A, or a resistance such as 40 ohm");
        return (volts.Value, amps.Value > 0 ? volts.Value / amps.Value : 0);
    }
}
