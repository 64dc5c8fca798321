using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Builds supplies.</summary>
internal static class SupplyBinder
{
    /// <summary>Builds one.</summary>
    public static Supply Make(DeviceStatement device)
    {
        var ratings = device.Ratings("a voltage", Dimension.Voltage);
        var volts = device.Need(ratings, Dimension.Voltage, "24 V");
        var supply = new Supply(device.Name, volts, device.Span)
        {
            LimitAmps = device.Reader.Quantity("limit", Dimension.Current, "a current"),
            SourceOhms = device.Reader.Quantity("source", Dimension.Resistance, "a resistance", zeroAllowed: true) ?? 0,
            IsAlternating = device.Reader.Has("alternating"),
            IsSwitched = device.Reader.Has("switched"),
        };
        if (AdjustmentOf(device) is { } range)
        {
            supply = supply with { MinVolts = range.Low, MaxVolts = range.High };
            if (volts > 0 && (volts < range.Low || volts > range.High))
            {
                device.Report.OutOfRange(
                    device.Scope.At(ratings[Dimension.Voltage].Span), "The supply's voltage lies outside its adjustable range.",
                    "Give the voltage it is set to, within the range.");
            }
        }

        var ends = OwnEnds(device) ?? Supply.UsualEnds;
        return DeviceStatement.WithTerminals(supply with { Ends = ends }, ends.From, ends.To);
    }

    /// <summary>
    /// The terminals that the block of a supply names, <c>{ L N }</c> or <c>{ + - }</c>; null where there is none or contacts stand in it.
    /// </summary>
    public static TerminalPair? OwnEnds(DeviceStatement device)
    {
        var items = device.Syntax.Block.SelectMany(c => c.All<ContactSyntax>()).ToList();
        if (items is not [{ Part: null, To: null } first, { Part: null, To: null } second]) return null;
        if (first.IsNotTraced || second.IsNotTraced || first.From.Text == second.From.Text) return null;
        return (first.From.Text, second.From.Text) is ("-", "+") ? Supply.UsualEnds : new TerminalPair(first.From.Text, second.From.Text);
    }

    private static (double Low, double High)? AdjustmentOf(DeviceStatement device)
    {
        if (device.Reader.Find("adjustable") is not { } clause) return null;
        if (clause.Values[0] is not QuantityRangeSyntax range)
        {
            device.Report.MissingValue(
                device.Scope.At(clause.Span), "An adjustable supply needs the range of its voltage.", "Write it so: adjustable 22..29 V.");
            return null;
        }

        var low = device.Reader.Value(range.Low, Dimension.Voltage, "a voltage", zeroAllowed: true);
        var high = low is null ? null : device.Reader.Value(range.High, Dimension.Voltage, "a voltage");
        if (low is null || high is null) return null;
        if (low <= high) return (low.Value, high.Value);
        device.Report.OutOfRange(device.Scope.At(range.Span), "The range runs backwards.", "Write the lower voltage first.");
        return null;
    }
}
