using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;
using CsCheck;
using Schematic.Language;
using Schematic.Text;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Language;

/// <summary>Reading the next version of a text gives what reading it afresh gives, and leaves alone what did not change.</summary>
public class IncrementalTests
{
    private const string Panel = """
        title "Desk" number D-1
        connector J1 "plug" { pins ; solder ; strip 4 pitch 5 mm ; spare 4 }
        actuator KEY { off rest ; on springs-to off }
        lamp DS1 24 V 40 mA { J1:1 J1:2 }
        wire W1 22 AWG black 300 mm J1:1 -> J1:3

        """;

    private static readonly string[] Pieces = ["", "{", "}", "\"", "#", "\n", "wire ", "lamp X ", " 24 V", ";", "“", "DS1", "1,5 A"];

    public static TheoryData<string> Texts
    {
        get
        {
            var texts = new TheoryData<string>();
            foreach (var file in Directory.EnumerateFiles(Repository.PathOf("examples"), "*.panel", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
                texts.Add(Path.GetRelativePath(Repository.Root, file));
            return texts;
        }
    }

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_moved_statement_says_what_it_says_when_read_there(string file)
    {
        var text = File.ReadAllText(Repository.PathOf(file));
        var before = PanelParser.ParseNext(new SourceText("a.panel", text), null);
        var moved = new SourceText("a.panel", "# one line more\n" + text);
        Assert.Equal(Dump(PanelParser.Parse(moved)), Dump(PanelParser.ParseNext(moved, before)));
    }

    [Fact]
    public void Every_word_of_the_language_moves_too()
    {
        foreach (var page in WordCatalogue.Pages)
        {
            var before = PanelParser.ParseNext(new SourceText("a.panel", page.Example), null);
            var moved = new SourceText("a.panel", "\n\n" + page.Example);
            Assert.Equal(Dump(PanelParser.Parse(moved)), Dump(PanelParser.ParseNext(moved, before)));
        }
    }

    [Fact]
    public void What_stands_before_a_change_is_the_same_object()
    {
        var before = PanelParser.ParseNext(new SourceText("a.panel", Panel), null);
        var after = PanelParser.ParseNext(new SourceText("a.panel", Panel.Replace("40 mA", "50 mA", StringComparison.Ordinal)), before);
        Assert.All(new[] { 0, 1, 2 }, i => Assert.Same(before.Statements[i], after.Statements[i]));
        Assert.NotSame(before.Statements[3], after.Statements[3]);
    }

    [Fact]
    public void A_finding_moves_with_its_statement()
    {
        var before = PanelParser.ParseNext(new SourceText("a.panel", "lmap DS1 24 V\n"), null);
        var source = new SourceText("a.panel", "# above\nlmap DS1 24 V\n");
        var finding = Assert.Single(PanelParser.ParseNext(source, before).Diagnostics);
        Assert.Same(source, finding.Span.Source);
        Assert.Equal("lmap", source.Slice(finding.Span.Span).ToString());
        Assert.Equal("lmap", source.Slice(Assert.Single(finding.Repairs).Span.Span).ToString());
    }

    [Fact]
    public void Any_run_of_edits_reads_as_a_fresh_text() => Gen.Select(
        Gen.Int[0, 400], Gen.Int[0, 12], Gen.Int[0, 12]).Array[1, 8]
        .Holds(
            edits =>
            {
                var text = Panel;
                var syntax = PanelParser.ParseNext(new SourceText("a.panel", text), null);
                foreach (var (at, length, which) in edits)
                {
                    var put = Pieces[which];
                    var start = at % (text.Length + 1);
                    text = text.Remove(start, Math.Min(length, text.Length - start)).Insert(start, put);
                    var source = new SourceText("a.panel", text);
                    syntax = PanelParser.ParseNext(source, syntax);
                    Assert.Equal(Dump(PanelParser.Parse(source)), Dump(syntax));
                }
            },
            count: 300);

    /// <summary>Everything that a syntax says, every property of every record.</summary>
    private static string Dump(PanelSyntax syntax)
    {
        var text = new StringBuilder();
        Add(text, syntax.Statements);
        foreach (var found in syntax.Diagnostics)
            text.Append(CultureInfo.InvariantCulture, $"\n{found.Rule} {found.Span.Span} {found.Message} {found.Help} {string.Join(' ', found.Repairs.Select(r => $"{r.Span.Span} {r.Text}"))}");
        return text.ToString();
    }

    private static void Add(StringBuilder text, object? value)
    {
        if (value is null or string || value.GetType().IsPrimitive || value.GetType().IsEnum || value is TextSpan)
        {
            text.Append(CultureInfo.InvariantCulture, $"{value} ");
        }
        else if (value is IEnumerable items)
        {
            text.Append("[\n");
            foreach (var item in items) Add(text, item);
            text.Append(']');
        }
        else
        {
            text.Append(value.GetType().Name).Append('(');
            foreach (var property in value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.GetIndexParameters().Length == 0))
            {
                text.Append(property.Name).Append('=');
                Add(text, property.GetValue(value));
            }

            text.Append(')');
        }
    }
}
