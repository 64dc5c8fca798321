using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Drawing;
using Schematic.Text;

namespace Schematic.Layout.Inspection;

/// <summary>Tells the faults of finished sheets as findings, so that none is printed without a word.</summary>
public static class SheetFindings
{
    private const int FaultsNamed = 3;

    /// <summary>One finding for each sheet with faults.</summary>
    /// <param name="sheets">The sheets, framed and numbered.</param>
    /// <param name="zoneAt">The zone of a point.</param>
    public static ImmutableArray<Diagnostic> Of(IEnumerable<Sheet> sheets, Func<PointMm, string> zoneAt) =>
        [.. sheets.Select(s => (Sheet: s, SheetInspector.Inspect(s).Faults)).Where(s => !s.Faults.IsEmpty).Select(s => Finding(s.Sheet, s.Faults, zoneAt))];

    private static Diagnostic Finding(Sheet sheet, ImmutableArray<SheetFault> faults, Func<PointMm, string> zoneAt)
    {
        var named = faults.Take(FaultsNamed).Select(f => $"{Words(f)} in zone {zoneAt(f.At)}");
        var more = faults.Length > FaultsNamed ? $", and {faults.Length - FaultsNamed} more" : "";
        return new Diagnostic(
            "sheet-fault", Severity.Warning, FormattableString.Invariant($"Sheet {sheet.Number} is not drawn as it should be: {string.Join(", ", named)}{more}."),
            SourceSpan.None)
        {
            Help = "Read these places with the wire list beside you; a larger sheet or shorter names and descriptions give the drawing room.",
        };
    }

    private static string Words(SheetFault fault) => fault.Kind switch
    {
        SheetFaultKind.TextOnText => $"'{fault.First}' lies on '{fault.Second}'",
        SheetFaultKind.TextOnWire => $"'{fault.First}' lies on a wire",
        SheetFaultKind.TextOnSymbol => $"'{fault.First}' lies on a symbol",
        SheetFaultKind.WireThroughSymbol => $"a wire of {fault.First} touches {fault.Second}",
        SheetFaultKind.SymbolOnSymbol => $"{fault.First} lies on {fault.Second}",
        SheetFaultKind.OutsideContent => $"'{fault.First}' stands outside the drawing space",
        SheetFaultKind.JointWithoutDot => $"wires of {fault.First} meet without a dot",
        SheetFaultKind.DotWithoutJoint => $"a dot of {fault.First} joins nothing",
        SheetFaultKind.WireOnWire => $"wires of {fault.First} and {fault.Second} run on each other",
        SheetFaultKind.SlantedWire => $"a wire of {fault.First} is slanted",
        SheetFaultKind.ShortenedText => $"'{fault.First}' is shortened",
        _ => fault.ToString(),
    };
}
