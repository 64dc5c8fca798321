using System.Globalization;
using Schematic.Analysis.Loads;
using Schematic.Drawing;

namespace Schematic.Layout.LoadSheets;

/// <summary>
/// A supply's settings as a scale: the range it can be set to, the part of it that serves every load, and where it stands.
/// A fixed supply has none.
/// </summary>
internal static class SettingScale
{
    private const double Height = 18;

    private const double LetterHeight = 2.5;
    private const double Bar = 4;

    /// <summary>Height in millimetres that the scale takes; none for a fixed supply.</summary>
    public static double HeightOf(SupplyLoad load) => load.Supply.IsAdjustable ? Height : 0;

    /// <summary>The marks of the scale at the top of a box.</summary>
    public static IEnumerable<Mark> Marks(SupplyLoad load, BoxMm box)
    {
        if (!load.Supply.IsAdjustable) yield break;
        var (low, high) = (load.Supply.MinVolts, load.Supply.MaxVolts);
        var (left, right) = (box.Left + 20, box.Right - 20);
        double X(double volts) => left + ((Math.Clamp(volts, low, high) - low) / (high - low) * (right - left));

        var top = box.Top + 5;
        yield return LineMark.Rectangle(MarkRole.Table, new BoxMm(left, top, right, top + Bar), Pen.Narrow);
        if (load.Setting.IsPossible)
        {
            var (from, to) = (X(load.Setting.Lowest.Volts), X(load.Setting.Highest.Volts));
            yield return LineMark.Rectangle(MarkRole.Table, new BoxMm(from, top, to, top + Bar), Pen.Wide, new Ink(205, 205, 205));
            var middle = (from + to) / 2;
            if (Fonts.Lettering.WidthMm(Serves, LetterHeight) + 2 < to - from)
                yield return Text(Serves, middle, top + (Bar / 2) + (LetterHeight / 2), TextAlign.Middle);
        }

        yield return Text(Volts(low), left - 2, top + (Bar / 2) + (LetterHeight / 2), TextAlign.End);
        yield return Text(Volts(high), right + 2, top + (Bar / 2) + (LetterHeight / 2), TextAlign.Start);
        foreach (var mark in Pointer(X(load.Supply.Volts), top, $"set to {Volts(load.Supply.Volts)}", above: true)) yield return mark;
        if (load.Setting.Recommended is { } advised)
            foreach (var mark in Pointer(X(advised), top + Bar, $"advised {Volts(advised)}", above: false)) yield return mark;
    }

    private const string Serves = "serves every load";

    private static IEnumerable<Mark> Pointer(double x, double edge, string words, bool above)
    {
        var sign = above ? -1 : 1;
        yield return LineMark.Between(MarkRole.Table, new(x, edge), new(x, edge + (sign * 2)), Pen.Frame);
        yield return Text(words, x, above ? edge - 2.5 : edge + 2.8 + LetterHeight, TextAlign.Middle);
    }

    private static TextMark Text(string text, double x, double y, TextAlign align) =>
        new(MarkRole.Table, text, new PointMm(x, y), LetterHeight) { Align = align };

    private static string Volts(double volts) => volts.ToString("0.0#", CultureInfo.InvariantCulture) + " V";
}
