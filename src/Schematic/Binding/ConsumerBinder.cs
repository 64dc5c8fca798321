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
            var stated = ratings.Values.Select(r => device.Scope.At(r.Span)).OrderBy(s => s.Span.Start).ToList();
            device.Report.Contradiction(
                stated[^1], $"{ratings.Count} of voltage, current, resistance and power are given.", "Give two of them; they give the others.", stated[0]);
        }

        var figures = RatedFigures.Of(ratings);
        return new Consumer(device.Name, kind, figures.Volts, figures.Amps, device.Span)
        {
            StatedOhms = figures.Ohms,
            Reckoned = figures.Reckoned,
            OperatesVolts = device.Reader.Quantity("operates", Dimension.Voltage, "a voltage"),
            MaxVolts = device.Reader.Quantity("max", Dimension.Voltage, "a voltage"),
        };
    }
}
