using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Reads the settings of the drawing. Of a used file only the cautions hold: the rest speaks of its own drawing.</summary>
internal sealed class SettingBinder(BindingReporter report)
{
    private static readonly string[] MayRepeat = ["caution", "note", "readings"];
    private static readonly string[] Sizes = ["A4", "A3", "A2", "A1", "A0", "Letter", "Tabloid"];

    public Panel Bind(IReadOnlyList<ScopedStatement> statements, Scope main)
    {
        var settings = statements.Where(s => s.Syntax is SettingSyntax { Keyword.Text: not "limits" })
            .ToLookup(s => s.Scope, s => ((SettingSyntax)s.Syntax).Clauses);
        var reader = new ClauseReader([.. settings[main].SelectMany(c => c)], main, report, MayRepeat);
        var cautions = statements.Where(s => s.Syntax is SettingSyntax)
            .SelectMany(s => Texts(((SettingSyntax)s.Syntax).Clauses, "caution"));
        return new Panel
        {
            Title = TitleOf(reader),
            Sheet = SheetOf(reader, main) ?? new Panel().Sheet,
            Symbols = reader.Word("symbols")?.Text == "ieee" ? SymbolStyle.Ieee : SymbolStyle.Iec,
            BuildCount = reader.Count("build", 1, 100_000) ?? 1,
            Limits = LimitsOf(statements, main),
            Cautions = [.. cautions.Distinct(StringComparer.Ordinal)],
            Notes = [.. Texts(reader.Clauses, "note")],
        };
    }

    private static IEnumerable<string> Texts(ImmutableArray<ClauseSyntax> clauses, string keyword) =>
        clauses.Where(c => c.Keyword == keyword).SelectMany(c => c.All<WordSyntax>()).Select(w => w.Text);

    private static TitleData TitleOf(ClauseReader reader) => new()
    {
        Title = reader.Word("title")?.Text ?? "",
        Number = reader.Word("number")?.Text ?? "",
        Revision = reader.Word("revision")?.Text ?? "",
        Date = reader.Word("date")?.Text ?? "",
        Owner = reader.Word("owner")?.Text ?? "",
        DrawnBy = reader.Word("drawn")?.Text ?? "",
        ApprovedBy = reader.Word("approved")?.Text ?? "",
    };

    private SheetSize? SheetOf(ClauseReader reader, Scope main)
    {
        if (reader.Find("sheet") is not { } clause) return null;
        var words = clause.All<WordSyntax>().ToList();
        if (Sizes.Contains(words[0].Text))
            return SheetSize.Find(words[0].Text, landscape: words.Count == 1 || words[1].Text == "landscape");
        report.UnknownWord(main.At(words[0].Span), "unknown-name", "a sheet size", words[0].Text, Sizes);
        return null;
    }

    private DesignLimits LimitsOf(IReadOnlyList<ScopedStatement> statements, Scope main)
    {
        var blocks = statements.Where(s => s.Scope == main && s.Syntax is SettingSyntax { Keyword.Text: "limits" })
            .SelectMany(s => ((SettingSyntax)s.Syntax).Clauses);
        var reader = new ClauseReader([.. blocks], main, report);
        var limits = new DesignLimits();
        if (reader.Find("drop")?.All<QuantitySyntax>().First() is { } drop)
        {
            limits = drop.Dimension == Dimension.Percent
                ? limits with { DropPercent = reader.Value(drop, Dimension.Percent, "a percentage") }
                : limits with { DropVolts = reader.Value(drop, Dimension.Voltage, "a voltage or a percentage") };
        }

        return limits with
        {
            AmbientCelsius = Temperature(reader, main, "ambient") ?? limits.AmbientCelsius,
            InsulationCelsius = Temperature(reader, main, "insulation") ?? limits.InsulationCelsius,
            BundledWires = reader.Count("bundle", 1, 10_000),
        };
    }

    private double? Temperature(ClauseReader reader, Scope main, string keyword)
    {
        if (reader.Find(keyword)?.All<QuantitySyntax>().First() is not { } quantity) return null;
        if (quantity.Dimension != Dimension.Temperature)
        {
            report.WrongUnit(main.At(quantity.Span), quantity, "a temperature, such as 30 degC,", possible: [Dimension.Temperature]);
            return null;
        }

        if (quantity.Value is >= -60 and <= 300) return quantity.Value;
        report.OutOfRange(
            main.At(quantity.Span), $"{quantity.Number} {quantity.Unit} is out of range for `{keyword}`.",
            "Give a temperature from -60 to 300 degrees Celsius.");
        return null;
    }
}
