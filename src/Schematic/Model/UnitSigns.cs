using System.Text.RegularExpressions;

namespace Schematic.Model;

/// <summary>
/// Units as printed sheets and pages write them. The language and all that is printed on a terminal or exported have what can be typed:
/// <c>mm2</c>, <c>ohm</c>, <c>uF</c>, <c>degC</c>; a sheet has the signs of ISO 80000-1: <c>mm²</c>, <c>Ω</c>, <c>µF</c>, <c>°C</c>. Only
/// what stands behind a figure, or last in a heading, is a unit; words that are to be typed into a file stay as they are typed.
/// </summary>
public static partial class UnitSigns
{
    /// <summary>The text with signs in place of what is typed for them.</summary>
    public static string Of(string text) => MayHold(text) ? Typed().Replace(text, m => m.ValueSpan switch
    {
        "mm2" => "mm²",
        "degC" => "°C",
        ['u', var unit] => $"µ{unit}",
        var ohms => $"{ohms[..^3]}Ω",
    }) : text;

    private static bool MayHold(string text) =>
        text.Contains("ohm", StringComparison.Ordinal) || text.Contains("mm2", StringComparison.Ordinal)
        || text.Contains('u') || text.Contains("degC", StringComparison.Ordinal);

    [GeneratedRegex(@"(?<=[0-9?] )(?:[mkM]?ohm|mm2|u[AF]|degC)(?![\p{L}\p{N}_-])|(?<= )(?:ohm|mm2)$", RegexOptions.CultureInvariant)]
    private static partial Regex Typed();
}
