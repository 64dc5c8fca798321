using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Builds resistors that something other than a hand varies: thermistors and photoresistors.</summary>
internal static class SensorBinder
{
    private static readonly QuantityRange Beta = new(100, 20_000, "a B value from 100 K to 20,000 K");

    /// <summary>Builds a thermistor, by a range of ohms or by its resistance at 25 degrees, its B value and a range of temperature.</summary>
    public static Part MakeThermistor(DeviceStatement device)
    {
        var ratings = device.Ratings("a resistance or a power", Dimension.Resistance, Dimension.Power);
        double? watts = ratings.GetValueOrDefault(Dimension.Power)?.Value;
        if (ResistorBinder.RangeAlone(device) is { } range)
        {
            if ((device.Reader.Find("beta") ?? device.Reader.Find("over")) is { } beside)
            {
                device.Report.Contradiction(
                    device.Scope.At(beside.Span), "A characteristic is given beside a range of resistance.",
                    "Give the range of ohms alone, or the ohms at 25 degC with beta and over.", device.Scope.At(range.Span));
            }

            var (low, high) = RangeReader.Read(device, range, Dimension.Resistance, "a resistance") ?? (1, 1);
            return ResistorBinder.Ranged(device, RangedResistorKind.Thermistor, low, high) with { RatedWatts = watts };
        }

        var stated = DeviceStatement.Stated(ratings, Dimension.Resistance);
        if (!device.Reader.Has("beta") && !device.Reader.Has("over")) return NotMeasured(device, RangedResistorKind.Thermistor, "warm", "cold") with { RatedWatts = watts, WholeOhms = stated };
        var ohms = device.Need(ratings, Dimension.Resistance, "10 kohm");
        if (DataOf(device, ohms) is not { } data) return NotMeasured(device, RangedResistorKind.Thermistor, "warm", "cold") with { RatedWatts = watts };
        return new RangedResistor(device.Name, RangedResistorKind.Thermistor, EndAt(data, data.MostCelsius), EndAt(data, data.LeastCelsius), device.Span)
        {
            RatedWatts = watts, Thermistor = data,
        };
    }

    /// <summary>Builds a photoresistor, by a range of ohms or by those in the dark and in the light.</summary>
    public static Part MakePhotoresistor(DeviceStatement device)
    {
        double? watts = device.Ratings("a power", Dimension.Power).GetValueOrDefault(Dimension.Power)?.Value;
        if (ResistorBinder.RangeAlone(device) is { } range)
        {
            var (low, high) = RangeReader.Read(device, range, Dimension.Resistance, "a resistance") ?? (1, 1);
            return ResistorBinder.Ranged(device, RangedResistorKind.Photoresistor, low, high) with { RatedWatts = watts };
        }

        var (dark, lit) = (Ohms(device, "dark"), Ohms(device, "lit"));
        if (dark < lit)
        {
            device.Report.OutOfRange(device.Scope.At(device.Reader.Find("lit")!.Span), "It has more in the light than in the dark.", "A photoresistor has less: exchange the two.");
        }

        if (dark < lit) lit = dark;
        return new RangedResistor(
            device.Name, RangedResistorKind.Photoresistor, new ResistanceEnd(lit, $"lit ({ValueText.Ohms(lit)})"),
            new ResistanceEnd(dark, $"dark ({ValueText.Ohms(dark)})"), device.Span) { RatedWatts = watts };
    }

    /// <summary>What nobody has measured yet has any resistance at either end.</summary>
    private static RangedResistor NotMeasured(DeviceStatement device, RangedResistorKind kind, string least, string most) =>
        new(device.Name, kind, new ResistanceEnd(null, least), new ResistanceEnd(null, most), device.Span);

    private static double? Ohms(DeviceStatement device, string keyword) => device.Reader.Quantity(keyword, Dimension.Resistance, "a resistance");

    private static ResistanceEnd EndAt(ThermistorData data, double celsius) =>
        new(data.OhmsAt(celsius), $"at {ValueText.Number(celsius)} °C ({ValueText.Ohms(data.OhmsAt(celsius))})");

    private static ThermistorData? DataOf(DeviceStatement device, double ohms)
    {
        if (device.Reader.Find("over") is not { } over || over.Values[0] is not QuantityRangeSyntax range)
        {
            if (!device.Syntax.HasErrors)
                device.Report.MissingValue(device.Span, $"It is not stated what `{device.ShownName}` has over a range of temperature.", "Add it, such as beta 3950 K over -20..60 degC, or give a range of ohms: 2..90 kohm.");
            return null;
        }

        var beta = BetaOf(device);
        if (beta is null || ohms <= 0) return null;
        foreach (var end in new[] { range.Low, range.High })
        {
            if (end.Dimension == Dimension.Temperature && end.Value is > -200 and < 1000) continue;
            if (end.Dimension != Dimension.Temperature) device.Report.WrongUnit(device.Scope.At(end.Span), end, "a temperature");
            else device.Report.OutOfRange(device.Scope.At(end.Span), $"{end.Number} {end.Unit} is out of range here.", "Give a temperature from -200 degC to 1000 degC.");
            return null;
        }

        if (range.Low.Value <= range.High.Value) return new ThermistorData(ohms, beta.Value, range.Low.Value, range.High.Value);
        device.Report.OutOfRange(device.Scope.At(range.Span), "The range runs backwards.", "Write the lower value first.");
        return null;
    }

    /// <summary>A B value is in kelvin; the unit may be left out.</summary>
    private static double? BetaOf(DeviceStatement device)
    {
        if (device.Reader.Find("beta") is not { } clause)
        {
            if (!device.Syntax.HasErrors) device.Report.MissingValue(device.Span, $"`{device.ShownName}` has no B value.", "Add it, such as beta 3950 K.");
            return null;
        }

        var quantity = clause.All<QuantitySyntax>().First();
        if (quantity.Unit is not ("" or "K"))
        {
            device.Report.WrongUnit(device.Scope.At(quantity.Span), quantity, "a B value in kelvin");
            return null;
        }

        if (quantity.Value >= Beta.Least && quantity.Value <= Beta.Most) return quantity.Value;
        device.Report.OutOfRange(device.Scope.At(quantity.Span), $"{quantity.Number} is out of range here.", $"Give {Beta.Words}.");
        return null;
    }
}
