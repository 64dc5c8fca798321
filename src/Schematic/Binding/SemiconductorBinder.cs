using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Builds rectifiers, transistors and optocouplers.</summary>
internal static class SemiconductorBinder
{
    /// <summary>Builds a bridge rectifier.</summary>
    public static Part MakeRectifier(DeviceStatement device)
    {
        var ratings = device.Ratings("a current or a voltage", Dimension.Current, Dimension.Voltage);
        var rectifier = new BridgeRectifier(device.Name, device.Span)
        {
            MaxAmps = DeviceStatement.Stated(ratings, Dimension.Current),
            ReverseVolts = DeviceStatement.Stated(ratings, Dimension.Voltage),
        };
        if (device.Reader.Quantity("drop", Dimension.Voltage, "a voltage") is { } drop) rectifier = rectifier with { ForwardVolts = drop, IsDropStated = true };
        return DeviceStatement.WithTerminals(rectifier, BridgeRectifier.TerminalNames.AsSpan());
    }

    /// <summary>Builds a transistor that is an output.</summary>
    public static Part MakeTransistor(DeviceStatement device)
    {
        var ratings = device.Ratings("a current or a voltage", Dimension.Current, Dimension.Voltage);
        var transistor = new TransistorOutput(device.Name, device.Span)
        {
            MaxVolts = DeviceStatement.Stated(ratings, Dimension.Voltage), MaxAmps = DeviceStatement.Stated(ratings, Dimension.Current),
        };
        return Saturation(device) is { } volts ? transistor with { SaturationVolts = volts, IsSaturationStated = true } : transistor;
    }

    /// <summary>Builds an optocoupler.</summary>
    public static Part MakeOptocoupler(DeviceStatement device)
    {
        var ratings = device.Ratings("a voltage or a current", Dimension.Voltage, Dimension.Current);
        double? volts = null;
        double? amps = null;
        foreach (var quantity in device.Reader.Find("output")?.All<QuantitySyntax>() ?? [])
        {
            if (quantity.Dimension == Dimension.Voltage) volts = device.Reader.Value(quantity, Dimension.Voltage, "a voltage") ?? volts;
            else amps = device.Reader.Value(quantity, Dimension.Current, "a current, such as 50 mA,") ?? amps;
        }

        var coupler = new Optocoupler(
            device.Name, DeviceStatement.Stated(ratings, Dimension.Voltage), DeviceStatement.Stated(ratings, Dimension.Current), device.Span)
        {
            MaxVolts = volts, MaxAmps = amps,
        };
        if (Saturation(device) is { } saturation) coupler = coupler with { SaturationVolts = saturation, IsSaturationStated = true };
        return DeviceStatement.WithTerminals(coupler, Optocoupler.TerminalNames.AsSpan());
    }

    private static double? Saturation(DeviceStatement device) => device.Reader.Quantity("saturates", Dimension.Voltage, "a voltage");
}
