using Schematic.Editor;
using Schematic.Language;
using Xunit;

namespace Schematic.Tests.Editor;

public class CompleterTests
{
    [Fact]
    public void A_line_begins_with_every_statement() => Assert.Equal(
        PanelParser.StatementKeywords.Order(StringComparer.Ordinal), EditorText.Read(EditorText.Unit + "¦").Proposed.Order(StringComparer.Ordinal));

    [Fact]
    public void Every_word_after_which_the_grammar_goes_on_is_proposed()
    {
        var words = EditorText.Read(EditorText.Unit + "solenoid L2 24 V ¦").Proposed;
        Proposes(words, ["operates", "releases", "max", "suppressed", "price", "order", "on-hand"]);
        Assert.DoesNotContain("adjustable", words);
    }

    [Fact]
    public void A_block_has_words_of_its_own() =>
        Proposes(EditorText.Read(EditorText.Unit + "connector J2 {\n  ¦\n}\n").Proposed, ["pins", "sockets", "spiral", "key", "mates", "spare"]);

    [Theory]
    [InlineData("lock LEVER ¦", "at")]
    [InlineData("switch S2 make ¦", "on")]
    [InlineData("expect J1:1 ¦", "closed", "high", "low", "open")]
    [InlineData("wire W3 22 AWG red 300 mm PS1:+ ¦", "->")]
    public void Words_that_must_follow_are_proposed(string line, params string[] words) =>
        Proposes(EditorText.Read(EditorText.Unit + line).Proposed, words);

    [Fact]
    public void Free_contacts_come_first()
    {
        var text = EditorText.Read(EditorText.Unit + "wire W3 22 AWG red 300 mm PS1:+ -> P1:¦");
        var found = Completer.At(text.Panel, text.Offset);
        Assert.Equal(["3", "4", "5", "6", "7", "1", "2"], found.Select(p => p.Word));
        Assert.Equal("free", found[0].Detail);
        Assert.Equal("W1 to PS1:+, net LAMP", found[5].Detail);
    }

    [Fact]
    public void A_list_goes_on_with_contacts_of_the_same_part() =>
        Assert.Contains("7", EditorText.Read(EditorText.Unit + "net N P1:3 ¦").Proposed);

    [Fact]
    public void The_other_end_of_a_range_is_a_contact_too() => Assert.Contains("6", EditorText.Read(EditorText.Unit + "net N P1:3..¦").Proposed);

    [Fact]
    public void A_connector_lists_its_own_contacts_as_spare() =>
        Assert.Equal(["3", "4"], EditorText.Read("connector J9 { pins ; strip 4 pitch 5 mm ; spare ¦ }\nwire W1 22 AWG red 300 mm J9:1 -> J9:2\n").Proposed.Take(2));

    [Theory]
    [InlineData("wire W3 22 ¦", "AWG")]
    [InlineData("wire W3 22 AWG red 300m¦", "mm")]
    [InlineData("lamp DS2 24 ¦", "V")]
    [InlineData("lamp DS2 24 V 40m¦", "mA")]
    public void Units_follow_numbers(string line, string unit) => Assert.Contains(unit, EditorText.Read(EditorText.Unit + line).Proposed);

    [Fact]
    public void Colours_are_proposed_where_a_colour_may_stand()
    {
        Proposes(EditorText.Read(EditorText.Unit + "wire W3 22 AWG ¦").Proposed, ["black", "green-yellow"]);
        Assert.DoesNotContain("black", EditorText.Read(EditorText.Unit + "solenoid L2 24 V ¦").Proposed);
    }

    [Theory]
    [InlineData("switch S2 make on LEVER when ¦")]
    [InlineData("lock LEVER at ¦")]
    [InlineData("expect DS1 energised when LEVER ¦")]
    public void Positions_are_those_of_the_actuator_that_is_spoken_of(string line) =>
        Proposes(EditorText.Read(EditorText.Unit + line).Proposed, ["normal", "check", "reverse"]);

    [Fact]
    public void A_condition_speaks_of_actuators_loads_and_supplies()
    {
        Assert.Equal(["LEVER", "DS1", "L1", "PS1"], EditorText.Read(EditorText.Unit + "expect DS1 energised when ¦").Proposed);
        Assert.Equal(["energised", "released"], EditorText.Read(EditorText.Unit + "expect DS1 energised when L1 ¦").Proposed);
        Assert.Equal(["on", "off"], EditorText.Read(EditorText.Unit + "expect DS1 energised when PS1 ¦").Proposed);
    }

    [Fact]
    public void Designators_stand_where_their_kind_may()
    {
        Assert.Equal(["J1", "P1"], EditorText.Read(EditorText.Unit + "connector P2 { sockets ; mates ¦ }").Proposed);
        Assert.Contains("LEVER", EditorText.Read(EditorText.Unit + "switch S2 make on ¦").Proposed);
        Assert.Contains("PS1:", EditorText.Read(EditorText.Unit + "wire W3 22 AWG red 300 mm ¦").Proposed);
    }

    [Fact]
    public void A_new_thing_is_offered_the_next_free_name() => Assert.Equal("DS2", EditorText.Read(EditorText.Unit + "lamp ¦").Proposed[0]);

    [Fact]
    public void A_file_is_proposed_where_one_is_named()
    {
        var text = EditorText.Read("use \"un¦\" as UNIT\n");
        var found = Completer.At(text.Panel, text.Offset, ["unit.panel", "first.readings"]);
        Assert.Equal("unit.panel", Assert.Single(found).Word);
        Assert.Equal("un", text.Panel.Source.Slice(found[0].Replaces).ToString());
    }

    [Theory]
    [InlineData("# lamp ¦")]
    [InlineData("title \"Desk ¦ lamp\"")]
    public void Nothing_is_proposed_in_comments_and_texts(string line) => Assert.Empty(EditorText.Read(EditorText.Unit + line).Proposed);

    [Fact]
    public void What_is_begun_gives_way()
    {
        var text = EditorText.Read(EditorText.Unit + "solenoid L2 24 V op¦");
        Assert.All(Completer.At(text.Panel, text.Offset).Where(p => p.Word == "operates"), p => Assert.Equal("op", text.Panel.Source.Slice(p.Replaces).ToString()));
    }

    private static void Proposes(List<string> found, params string[] words) => Assert.Empty(words.Except(found));

    /// <summary>Wherever one stands in whatever half-written text, an answer comes.</summary>
    [Fact]
    public void No_place_of_any_example_fails()
    {
        var text = File.ReadAllText(Repository.PathOf("examples/relay-latch/latch.panel"));
        var panel = EditorText.Open("main.panel", text);
        for (var at = 0; at <= text.Length; at += 7)
        {
            Completer.At(panel, at);
            Explainer.At(panel, at);
        }

        foreach (var cut in new[] { 100, 400, 900, 1300 })
        {
            var half = EditorText.Open("main.panel", text[..cut]);
            Completer.At(half, cut);
            Explainer.At(half, cut);
        }
    }
}
