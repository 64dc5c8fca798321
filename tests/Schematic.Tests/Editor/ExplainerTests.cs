using System.Globalization;
using Schematic.Diagnostics;
using Schematic.Editor;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Editor;

public class ExplainerTests
{
    [Fact]
    public void A_contact_tells_its_wire_net_mate_and_place_on_the_face()
    {
        var told = Explained(EditorText.Unit + "net N P1:¦1\n");
        Assert.Contains("**P1:1** of P1 \"plug\"", told, StringComparison.Ordinal);
        Assert.Contains("wire W1 22 AWG RD 300 mm to `PS1:+`", told, StringComparison.Ordinal);
        Assert.Contains("net LAMP: 2 members", told, StringComparison.Ordinal);
        Assert.Contains("meets `J1:1`", told, StringComparison.Ordinal);
        Assert.Contains("at the centre (ring 1 of 2)", told, StringComparison.Ordinal);
        Assert.Contains("contact size 20", told, StringComparison.Ordinal);
    }

    /// <summary>The wire side of sockets looks like the front of pins, that of pins is its mirror (see FaceViews).</summary>
    [Theory]
    [InlineData("P1", "sockets", 1)]
    [InlineData("J1", "pins", -1)]
    public void The_place_of_a_contact_is_that_of_the_side_where_its_wire_is_joined(string part, string half, int turned)
    {
        var text = EditorText.Read($"{EditorText.Unit}net N {part}:¦3\n");
        var contact = ((Connector)text.Panel.Loaded.Panel.FindPart(part)!).Insert.Contacts.Single(c => c.Name == "3");
        var x = turned * contact.XMm;
        var told = Explainer.At(text.Panel, text.Offset)!.Markdown;
        Assert.Contains("ring 2 of 2, place 2 of 6", told, StringComparison.Ordinal);
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(x):0.0} mm {(x < 0 ? "left" : "right")}"), told, StringComparison.Ordinal);
        Assert.Contains($"seen on the rear of the {half}", told, StringComparison.Ordinal);
    }

    [Fact]
    public void An_actuator_tells_its_positions_switches_and_lock()
    {
        var told = Explained(EditorText.Unit + "expect DS1 energised when LEV¦ER check\n");
        Assert.Contains("normal (rest) · check · reverse (springs to check)", told, StringComparison.Ordinal);
        Assert.Contains("S1", told, StringComparison.Ordinal);
        Assert.Contains("Locked at normal unless L1 energised", told, StringComparison.Ordinal);
    }

    /// <summary>What is quoted from the text is one line: found by typing at random, a tab between a figure and its unit.</summary>
    [Fact]
    public void A_quantity_is_quoted_without_the_tabs_and_line_ends_between_its_words()
    {
        Assert.StartsWith("**10 m** is a length", Explained("wire W1 10¦\t m  A:1 -> B:1\n"), StringComparison.Ordinal);
        Assert.Contains("unless L1 energised", Explained("actuator A { a rest ; b }\nsolenoid L1 { J:1 J:2 }\nlock A at b unless L1 \t energised\nexpect L1 energised when A¦ b\n"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_proved_panel_tells_its_chart_and_worst_cases()
    {
        var text = File.ReadAllText(Repository.PathOf("examples/lever-frame/lever.panel"));
        var panel = EditorText.Open("main.panel", text);
        var proved = panel.Prove(TestContext());
        Assert.DoesNotContain(proved.Findings, f => f.Severity == Severity.Error);
        var lever = Explainer.At(panel, text.IndexOf("actuator LEVER", StringComparison.Ordinal) + 10, proved)!.Markdown;
        Assert.Contains("| J1:4 - J1:5 | S1 normal | CLOSED | open | open |", lever, StringComparison.Ordinal);
        Assert.Contains("CLOSED", lever, StringComparison.Ordinal);
        var lamp = Explainer.At(panel, text.IndexOf("lamp     DS1", StringComparison.Ordinal) + 10, proved)!.Markdown;
        Assert.Contains("Worst case over all positions: ", lamp, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("solenoid L2 24 V 0.5 A operates 18¦ V { J1:3 J1:4 }", "coil-below-operate")]
    [InlineData("wire W5 22¦ AWG red 300 mm PS1:+ -> P1:3", "wire-overloaded")]
    [InlineData("wire W5 22 AWG red 3¦00 mm PS1:+ -> P1:3", "voltage-drop")]
    [InlineData("lamp DS5 24 V 40 m¦A { J1:3 J1:4 }", "lamp-inrush")]
    public void A_quantity_tells_what_it_is_checked_against(string line, string rule) =>
        Assert.Contains($"`{rule}`: ", Explained(EditorText.Unit + line), StringComparison.Ordinal);

    [Fact]
    public void Every_rule_that_a_quantity_names_exists() => Assert.Empty(QuantityChecks.AllRules.Except(RuleCatalogue.Rules));

    [Fact]
    public void A_word_of_the_language_tells_its_page() =>
        Assert.Contains("# lamp", Explained(EditorText.Unit + "la¦mp DS9 24 V 40 mA\n"), StringComparison.Ordinal);

    [Fact]
    public void Text_in_quotes_and_comments_tells_nothing()
    {
        Assert.Null(At(EditorText.Unit + "title \"a lam¦p\"\n"));
        Assert.Null(At(EditorText.Unit + "# a lam¦p\n"));
    }

    private static string Explained(string marked) => At(marked)?.Markdown ?? "nothing";

    private static Explanation? At(string marked)
    {
        var text = EditorText.Read(marked);
        return Explainer.At(text.Panel, text.Offset);
    }

    private static CancellationToken TestContext() => CancellationToken.None;
}
