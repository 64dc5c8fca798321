using Schematic.Editor;
using Xunit;

namespace Schematic.Tests.Editor;

public class MentionTests
{
    private static readonly (string Name, string Text) UnitFile = ("unit.panel", "connector J1 { pins ; strip 2 pitch 5 mm }\nactuator KEY { off rest ; on }\nlamp DS1 24 V 40 mA { J1:1 J1:2 }\n");

    [Theory]
    [InlineData("wire W9 22 AWG red 300 mm PS1:+ -> P¦1:3", "connector P1")]
    [InlineData("expect DS1 energised when LE¦VER check", "actuator LEVER")]
    [InlineData("place D¦S1 right", "lamp DS1")]
    [InlineData("lock LE¦VER at check unless L1 energised", "actuator LEVER")]
    [InlineData("expect J1:1 low when L¦1 energised", "solenoid L1")]
    [InlineData("wire W9 22 AWG red 300 mm PS1:¦- -> P1:3", "+ -")]
    [InlineData("net N P1:¦5", "connector P1")]
    public void A_name_leads_to_where_it_is_given(string line, string declared)
    {
        var text = EditorText.Read(EditorText.Unit + line);
        var span = Assert.Single(text.Panel.Mentions.DeclarationsOf(text.Mention.Thing));
        var there = span.Source.Slice(span.Source.LineSpan(span.Start.Line)).ToString();
        Assert.Contains(declared, there, StringComparison.Ordinal);
    }

    [Fact]
    public void A_position_belongs_to_its_actuator()
    {
        var text = EditorText.Read(EditorText.Unit + "actuator KEY { normal rest ; on }\nexpect DS1 energised when LEVER nor¦mal\n");
        Assert.Equal("LEVER", text.Mention.Thing.Owner);
        Assert.Equal(3, text.Panel.Mentions.Of(text.Mention.Thing).Length);
    }

    [Fact]
    public void References_are_found_where_a_range_counts_them_out()
    {
        var text = EditorText.Read(EditorText.Unit + "net N J1:3..6\nnet M J1:¦4\n");
        var lines = text.Panel.Mentions.Of(text.Mention.Thing).Select(m => text.Panel.Source.Slice(m.Span.Span).ToString());
        Assert.Equal(["4", "3..6", "4"], lines);
    }

    [Fact]
    public void A_prefix_leads_to_the_use_statement_and_the_rest_to_the_used_file()
    {
        const string main = "use \"unit.panel\" as UNIT\nconnector P1 { sockets ; mates UNIT.J1 }\nwire W1 22 AWG red 300 mm P1:1 -> P1:2\nplace UNIT.DS1 right\n";
        var panel = EditorText.Open("main.panel", main, UnitFile);
        var prefix = panel.Mentions.At("main.panel", main.IndexOf("UNIT.J1", StringComparison.Ordinal) + 1)!;
        Assert.Equal(new NamedThing(NamedKind.UsedFile, "main.panel", "UNIT"), prefix.Thing);
        var name = panel.Mentions.At("main.panel", main.IndexOf("UNIT.DS1", StringComparison.Ordinal) + 6)!;
        Assert.Equal(new NamedThing(NamedKind.Part, "unit.panel", "DS1"), name.Thing);
        Assert.Equal("unit.panel", Assert.Single(panel.Mentions.DeclarationsOf(name.Thing)).Source.FileName);
    }

    [Fact]
    public void Renaming_reaches_every_file()
    {
        const string main = "use \"unit.panel\" as UNIT\nconnector P1 { sockets ; mates UNIT.J1 }\nnet N UNIT.J1:1 P1:1\n";
        var panel = EditorText.Open("main.panel", main, UnitFile);
        var thing = panel.Mentions.At("main.panel", main.IndexOf("UNIT.J1", StringComparison.Ordinal) + 6)!.Thing;
        var result = Renamer.Rename(thing, "J5", [panel]);
        Assert.Null(result.Refusal);
        Assert.Equal(
            "use \"unit.panel\" as UNIT\nconnector P1 { sockets ; mates UNIT.J5 }\nnet N UNIT.J5:1 P1:1\n", Applied(main, "main.panel", result));
        Assert.Equal(
            "connector J5 { pins ; strip 2 pitch 5 mm }\nactuator KEY { off rest ; on }\nlamp DS1 24 V 40 mA { J5:1 J5:2 }\n",
            Applied(UnitFile.Text, "unit.panel", result));
    }

    [Fact]
    public void A_file_that_is_edited_is_renamed_in_those_that_use_it()
    {
        const string main = "use \"unit.panel\" as UNIT\nexpect UNIT.DS1 energised when UNIT.KEY on\n";
        var user = EditorText.Open("main.panel", main, UnitFile);
        var unit = EditorText.Open("unit.panel", UnitFile.Text);
        var thing = unit.Mentions.At("unit.panel", UnitFile.Text.IndexOf("on }", StringComparison.Ordinal))!.Thing;
        var result = Renamer.Rename(thing, "turned", [unit, user]);
        Assert.Equal("use \"unit.panel\" as UNIT\nexpect UNIT.DS1 energised when UNIT.KEY turned\n", Applied(main, "main.panel", result));
    }

    [Theory]
    [InlineData("net N P¦1:3", "J1", "taken")]
    [InlineData("net N P¦1:3", "1P", "no name")]
    [InlineData("net N P¦1:3", "P 2", "no name")]
    [InlineData("net N P1:¦3", "9", "arrangement")]
    [InlineData("fuse F1..F4 1 A\nnet N F¦2:1", "F9", "range")]
    public void A_name_that_cannot_be_given_is_refused(string line, string name, string why)
    {
        var text = EditorText.Read(EditorText.Unit + line);
        Assert.Contains(why, Renamer.Rename(text.Mention.Thing, name, [text.Panel]).Refusal, StringComparison.Ordinal);
    }

    private static string Applied(string text, string file, RenameResult result)
    {
        foreach (var change in result.Changes.Where(c => c.Span.Source.FileName == file).Reverse())
            text = text.Remove(change.Span.Span.Start, change.Span.Span.Length).Insert(change.Span.Span.Start, change.Text);
        return text;
    }
}
