using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Builds resistors: fixed ones, those of which a range is known, rheostats and potentiometers.</summary>
internal static class ResistorBinder
{
    /// <summary>Builds a resistor of one resistance, or of a range.</summary>
    public static Part Make(DeviceStatement device)
    {
        var ratings = device.Ratings("a resistance or a power", Dimension.Resistance, Dimension.Power);
        if (RangeAlone(device) is { } range)
        {
            if (ratings.TryGetValue(Dimension.Resistance, out var beside))
            {
                device.Report.Contradiction(
                    device.Scope.At(beside.Span), "A resistance is given beside a range of resistance.", "Keep the one that holds.", device.Scope.At(range.Span));
            }

            var (low, high) = RangeReader.Read(device, range, Dimension.Resistance, "a resistance") ?? (1, 1);
            return Ranged(device, RangedResistorKind.Resistor, low, high) with { RatedWatts = WattsOf(ratings), IsFixed = !device.Reader.Has("varies") };
        }

        if (device.Reader.Find("varies") is { } varies)
            device.Report.MissingValue(device.Scope.At(varies.Span), $"`{device.ShownName}` varies, and its range is not stated.", "Write it so: resistor R1 100..10000 ohm varies.");
        return new Resistor(device.Name, DeviceStatement.Stated(ratings, Dimension.Resistance), device.Span) { RatedWatts = WattsOf(ratings) };
    }

    /// <summary>Builds a rheostat.</summary>
    public static Part MakeRheostat(DeviceStatement device)
    {
        var (ohms, watts, travel) = Track(device);
        return new RangedResistor(
            device.Name, RangedResistorKind.Rheostat, Place(travel.From), Place(travel.To), device.Span)
        {
            RatedWatts = watts, WholeOhms = ohms, Travel = travel,
        };

        ResistanceEnd Place(double share) => new(share == 0 ? 0 : share * ohms, $"at {ValueText.Number(share * 100)} %");
    }

    /// <summary>Builds a potentiometer.</summary>
    public static Part MakePotentiometer(DeviceStatement device)
    {
        var (ohms, watts, travel) = Track(device);
        return DeviceStatement.WithTerminals(
            new Potentiometer(device.Name, ohms, device.Span) { RatedWatts = watts, Travel = travel },
            Potentiometer.FirstEnd, Potentiometer.WiperEnd, Potentiometer.LastEnd);
    }

    /// <summary>A resistor whose range is stated in ohms.</summary>
    internal static RangedResistor Ranged(DeviceStatement device, RangedResistorKind kind, double least, double most) => new(
        device.Name, kind, new ResistanceEnd(least, $"at {ValueText.Ohms(least)}"), new ResistanceEnd(most, $"at {ValueText.Ohms(most)}"), device.Span);

    /// <summary>A range that stands for itself, or null.</summary>
    internal static QuantityRangeSyntax? RangeAlone(DeviceStatement device)
    {
        var ranges = device.Syntax.Clauses.Where(c => c.Keyword.Length == 0).SelectMany(c => c.All<QuantityRangeSyntax>()).ToList();
        if (ranges.Count > 1) device.Report.StatedTwice(device.Scope.At(ranges[1].Span), "the range", device.Scope.At(ranges[0].Span));
        return ranges.FirstOrDefault();
    }

    private static double? WattsOf(Dictionary<Dimension, QuantitySyntax> ratings) => ratings.GetValueOrDefault(Dimension.Power)?.Value;

    private static (double? Ohms, double? Watts, WiperTravel Travel) Track(DeviceStatement device)
    {
        var ratings = device.Ratings("a resistance or a power", Dimension.Resistance, Dimension.Power);
        var ohms = DeviceStatement.Stated(ratings, Dimension.Resistance);
        var travel = WiperTravel.Whole;
        if (device.Reader.Find("wiper") is { } wiper)
        {
            if (wiper.Values[0] is not QuantityRangeSyntax range)
                device.Report.MissingValue(device.Scope.At(wiper.Span), "The wiper needs the range that it passes.", "Write it so: wiper 10..90 %.");
            else if (RangeReader.Read(device, range, Dimension.Percent, "a share", zeroAllowed: true) is var (low, high))
                travel = new WiperTravel(low / 100, high / 100);
        }

        return (ohms, WattsOf(ratings), travel);
    }
}
