using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Builds motors, bells, buzzers, heaters and meters: two of voltage, current, resistance and power give the others.</summary>
internal static class ConsumerBinder
{
    /// <summary>Builds one.</summary>
    public static Consumer Make(DeviceStatement device, ConsumerKind kind)
    {
        var ratings = device.Ratings(
            "a voltage, a current, a resistance or a power", Dimension.Voltage, Dimension.Current, Dimension.Resistance, Dimension.Power);
        if (ratings.Count > 2)
        {
            device.Report.Contradiction(
                device.Span, $"{ratings.Count} of voltage, current, resistance and power are given.", "Give two of them; they give the others.", device.Span);
        }

        var (volts, amps) = VoltsAndAmps(device, ratings);
        return new Consumer(device.Name, kind, volts, amps, device.Span)
        {
            OperatesVolts = device.Reader.Quantity("operates", Dimension.Voltage, "a voltage"),
            MaxVolts = device.Reader.Quantity("max", Dimension.Voltage, "a voltage"),
        };
    }

    private static (double Volts, double Amps) VoltsAndAmps(DeviceStatement device, Dictionary<Dimension, QuantitySyntax> ratings)
    {
        double? Of(Dimension dimension) => ratings.GetValueOrDefault(dimension)?.Value;
        var (volts, amps, ohms, watts) = (Of(Dimension.Voltage), Of(Dimension.Current), Of(Dimension.Resistance), Of(Dimension.Power));
        if (volts is null && amps > 0) volts = amps * ohms ?? watts / amps;
        if (volts is null && ohms > 0 && watts is not null) volts = Math.Sqrt(watts.Value * ohms.Value);
        volts ??= device.Need(ratings, Dimension.Voltage, "24 V");
        if (volts > 0 && amps is null) amps = volts / ohms ?? watts / volts;
        return (volts.Value, amps ?? device.Need(ratings, Dimension.Current, "2 A, or a resistance or a power"));
    }
}
