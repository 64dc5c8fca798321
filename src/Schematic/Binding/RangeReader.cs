using Schematic.Language;

namespace Schematic.Binding;

/// <summary>Reads ranges of quantities: the lower end first, both of one dimension.</summary>
internal static class RangeReader
{
    /// <summary>Both ends in the unit kept for the dimension; null, after a finding, where they are not good.</summary>
    public static (double Low, double High)? Read(
        DeviceStatement device, QuantityRangeSyntax range, Dimension dimension, string example, bool zeroAllowed = false)
    {
        var low = device.Reader.Value(range.Low, dimension, example, zeroAllowed);
        var high = low is null ? null : device.Reader.Value(range.High, dimension, example);
        if (low is null || high is null) return null;
        if (low <= high) return (low.Value, high.Value);
        device.Report.OutOfRange(device.Scope.At(range.Span), "The range runs backwards.", "Write the lower value first.");
        return null;
    }
}
