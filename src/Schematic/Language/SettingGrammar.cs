using Schematic.Text;
using Sprache;

namespace Schematic.Language;

/// <summary>Settings of the drawing: several may stand on one line.</summary>
internal static class SettingGrammar
{
    private static readonly string[] SettingWords =
        ["title", "number", "revision", "date", "owner", "drawn", "approved"];

    private static readonly Parser<ClauseRun> Nothing = Parse.Return(ClauseRun.Empty);

    private static readonly Parser<IEnumerable<ValueSyntax>> SheetValue =
        from size in Lexemes.Contact
        from orientation in Lexemes.OneOf("landscape", "portrait").Maybe()
        select orientation is null ? (IEnumerable<ValueSyntax>)[size] : [size, orientation];

    private static readonly ClauseSet Settings = SettingWords
        .Aggregate(new ClauseSet(), (set, word) => set.WithOne(word, _ => Lexemes.StringOrBare))
        .With("sheet", _ => SheetValue)
        .WithOne("symbols", _ => Lexemes.OneOf("iec", "ieee"))
        .WithOne("build", _ => Lexemes.Number)
        .WithOne("caution", _ => Lexemes.String)
        .WithOne("note", _ => Lexemes.String)
        .WithOne("readings", _ => Lexemes.String);

    private static readonly ClauseSet Limits = new ClauseSet()
        .WithOne("drop", s => s.Quantity).WithOne("ambient", s => s.Quantity).WithOne("insulation", s => s.Quantity)
        .WithOne("bundle", _ => Lexemes.Number);

    /// <summary>Whether a statement that begins with the word holds settings of the drawing.</summary>
    public static bool IsSetting(string word) => Settings.Keywords.Contains(word);

    /// <summary>The forms of these statements.</summary>
    public static IEnumerable<KeyValuePair<string, StatementForm>> Forms() =>
    [
        .. Settings.Keywords.Select(word => KeyValuePair.Create(word, new StatementForm(UsageOf(word), ReadSettings))),
        new("limits", new("limits { drop 1 V  ambient 30 degC  insulation 105 degC  bundle 12 }", ReadLimits)),
    ];

    private static string UsageOf(string word) => word switch
    {
        "sheet" => "sheet A4 landscape",
        "symbols" => "symbols iec",
        "build" => "build 2",
        "date" => "date 2026-11-25",
        "readings" => "readings \"first-evening.readings\"",
        "number" or "revision" => "number SB-014  revision B",
        _ => $"{word} \"text\"",
    };

    private static SettingSyntax ReadSettings(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        var run = reader.Read(Settings.Run, raw.Head, usage)!;
        return new SettingSyntax(keyword, reader.Accept(run, raw.Head, usage), raw.Span);
    }

    private static SettingSyntax ReadLimits(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.Read(Nothing, rest, usage);
        return new SettingSyntax(keyword, reader.Block(raw, Limits, usage), raw.Span);
    }
}
