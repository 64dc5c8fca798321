using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Builds transformers.</summary>
internal static class TransformerBinder
{
    /// <summary>Builds one; its voltages are effective ones.</summary>
    public static Part Make(DeviceStatement device)
    {
        var ratings = device.Ratings("a voltage or a power in VA", Dimension.Voltage, Dimension.ApparentPower);
        var secondary = device.Reader.Quantity("secondary", Dimension.Voltage, "a voltage");
        if (device.Reader.Find("secondary") is null && !device.Syntax.HasErrors)
            device.Report.MissingValue(device.Span, $"`{device.ShownName}` has no voltage of its secondary.", "Write it so: transformer T1 230 V secondary 24 V 50 VA. One of which nothing is known yet is a `device`, with the ohms of its windings.");
        var primary = device.Need(ratings, Dimension.Voltage, "230 V");
        return DeviceStatement.WithTerminals(
            new Transformer(device.Name, primary > 0 ? primary : 1, secondary ?? 1, device.Span) { VoltAmps = DeviceStatement.Stated(ratings, Dimension.ApparentPower) },
            Transformer.TerminalNames.AsSpan());
    }
}
