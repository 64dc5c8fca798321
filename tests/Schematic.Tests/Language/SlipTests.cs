using System.Text.RegularExpressions;
using Schematic.Language;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Language;

/// <summary>One mistake, one message: slips of hands that are used to other ways of writing.</summary>
public class SlipTests
{
    private const string Parts = """
        connector P1 { pins ; solder ; strip 6 }
        terminals X1 { 1..6 }
        board A1 { inputs IN1..IN4 max 5 V ; ground GND }
        supply PS1 24 V

        """;

    [Theory]
    [InlineData("lamp DS1 24 V [[0,5 A]]", "syntax: A number has a decimal point, not a comma. -> Write 0.5 A.")]
    [InlineData("connector J1 { pins ; strip 4 pitch [[5,08 mm]] ; spare 1,2 }", "syntax: A number has a decimal point, not a comma. -> Write 5.08 mm.")]
    [InlineData("never PS1:+ reaches [[A1:IN1-IN4]]", "unknown-contact: `A1` has no contact `IN1-IN4`. -> A range has two dots: A1:IN1..IN4.")]
    [InlineData("net A [[X1:1-4]]", "unknown-contact: `X1` has no contact `1-4`. -> A range has two dots: X1:1..4.")]
    [InlineData("net A [[X]] 1 P1:1", "missing-value: `X` does not say of which part it is a contact. -> Join part and contact by a colon: X:1.")]
    [InlineData("net A [[X1-1]] P1:1", "missing-value: `X1-1` does not say of which part it is a contact. -> Join part and contact by a colon: X1:1.")]
    [InlineData("wire W1 22 AWG black [[X1 1]] -> P1:1", "syntax: `X1 1` is no terminal. -> Join part and contact by a colon: X1:1.")]
    [InlineData("wire W1 22 AWG black X1:1 -> [[P1-4]]", "syntax: `P1-4` is no terminal. -> Join part and contact by a colon: P1:4.")]
    [InlineData("wire W1 22 AWG black [[16\"]] X1:1 -> P1:1", "syntax: A length in inches does not end with a quote here. -> Write 16 in.")]
    [InlineData("[[wire]] 22 AWG black 300 mm X1:1 -> P1:1", "syntax: The wire has no name. -> Put its name or number first: wire W1 22 AWG black 450 mm PS1:- -> P1:4.")]
    [InlineData("[[wire]] X1:1 -> P1:1", "syntax: The wire has no name.")]
    [InlineData("wire W1 [[AWG22]] black 300 mm X1:1 -> P1:1", "syntax: The unit of a gauge stands after its number. -> Write 22 AWG.")]
    [InlineData("wire W1 [[AWG 2/0]] black X1:1 -> P1:1", "syntax: The unit of a gauge stands after its number. -> Write 2/0 AWG.")]
    [InlineData("wire W1 [[0.5 mm]] black 300 mm X1:1 -> P1:1", "wrong-unit: 0.5 mm is a length; a cross-section is expected here. -> Did you mean 0.5 mm2?")]
    [InlineData("wire W1 [[0.5 mm]] black X1:1 -> P1:1", "wrong-unit: 0.5 mm is a length; a cross-section is expected here.")]
    [InlineData("lamp DS1 [[“proved”]] 24 V 50 mA", "syntax: This is no quote of the language. -> Put strings in straight quotes: \"text\".")]
    [InlineData("lamp DS1 24 V 50 mA [[//]] the lamp, white", "syntax: A comment does not begin so here. -> A comment begins with #.")]
    [InlineData("[[//]] a comment", "syntax: A comment does not begin so here. -> A comment begins with #.")]
    [InlineData("[[contactor]] K1 24 V 30 mA { coil X1:1 X1:2 }\nnet A K1:A1 X1:3", "unknown-statement: No statement begins with `contactor`. -> A contactor is written as a relay: relay K1 24 V 30 mA { coil X1:1 X1:2 ; make }.")]
    [InlineData("actuator L { a rest ; b }\npoles [[S1-S6]] make on L", "syntax: `S1-S6` is one name, not a range. -> A range has two dots: S1..S6.")]
    [InlineData("[[connector J1 \"unit\"]]\n  pins\n  strip 4\n}\nnet A J1:1 X1:1", "syntax: The block of this statement has no opening brace. -> Put an opening brace ({) at the end of this line.")]
    [InlineData("actuator LEVER { normal rest ; centre [[rset]] ; reverse }", "syntax: Expected nothing more, found `rset`.")]
    public void It_is_told_once_and_in_words(string text, string expected) => MarkedText.Gives(Parts + text, expected);

    [Theory]
    [InlineData("net A X1:1,2 P1:1")]
    [InlineData("wire 101 22 AWG 300 mm X1:1 -> P1:1")]
    [InlineData("wire W1 22 AWG \"x\" X1:1 -> P1:1", false)]
    [InlineData("wire 22 22 AWG 16 in X1:1 -> P1:1")]
    [InlineData("title \"a, 0,5 A // “b” 16\"")]
    [InlineData("connector J1 { pins ; grid 3 by 1 names A 5 7 ; spare 5,7 A }")]
    public void What_is_right_is_left_alone(string text, bool isClean = true)
    {
        var found = TestPanels.Diagnose(Parts + text);
        if (isClean) Assert.Empty(found.Select(f => f.Message));
        Assert.DoesNotContain(found, f => f.Message.Contains("no terminal", StringComparison.Ordinal));
    }

    public static TheoryData<string> Others => [.. Slips.WordsOfOthers.Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Others))]
    public void What_is_told_to_be_written_for_another_word_can_be_read(string word)
    {
        var statement = $"{word} Q1 {{ X1:1 X1:2 }}";
        var help = Assert.Single(TestPanels.Diagnose(statement), f => f.Rule == "unknown-statement").Help!;
        var samples = Regex.Match(help, @": (?<sample>[a-z]+ [A-Z].*?)\.?(\. |$)").Groups["sample"].Value;
        string[] unread = ["syntax", "unknown-statement", "wrong-unit", "missing-value"];
        foreach (var sample in samples.Split(", then "))
            Assert.DoesNotContain(TestPanels.Diagnose(sample), f => unread.Contains(f.Rule));
    }

    [Theory]
    [InlineData("lamp DS1 24 V 50 mA [[amber]]", "unknown-colour: `amber` is not a colour. -> Write yellow: colours are called as in IEC 60757.")]
    [InlineData("wire W1 22 AWG [[white/slate]] X1:1 -> P1:1", "unknown-colour: `white/slate` is not a colour. -> Write white/grey: colours are called as in IEC 60757.")]
    [InlineData("wire W1 22 AWG [[blakc]] X1:1 -> P1:1", "unknown-colour: `blakc` is not a colour. -> Did you mean `black`?")]
    public void A_colour_by_another_name_is_told_by_its_usual_one(string text, string expected) => MarkedText.Gives(Parts + text, expected);

    [Theory]
    [InlineData("thyristor")]
    [InlineData("gearbox")]
    public void A_kind_without_a_word_of_its_own_is_one_finding(string kind) =>
        Assert.Equal("unknown-statement", Assert.Single(TestPanels.Diagnose($"{kind} Q1 {{ X1:1 X1:2 }}\nnet B Q1:B Q1:C")).Rule);

    [Theory]
    [InlineData("anticlockwise", "clockwise")]
    [InlineData("de-energised", "energised")]
    [InlineData("unenergised", "energised")]
    [InlineData("unclosed", "closed")]
    [InlineData("nonadjustable", "adjustable")]
    [InlineData("unsuppressed", "suppressed")]
    public void The_opposite_is_never_proposed(string word, string opposite) => Assert.Null(Spelling.Nearest(word, [opposite]));

    [Theory]
    [InlineData("deisel", "diesel")]
    [InlineData("inputss", "inputs")]
    [InlineData("unknwon", "unknown")]
    public void A_slip_that_only_looks_like_a_negation_still_finds_its_word(string word, string meant) =>
        Assert.Equal(meant, Spelling.Nearest(word, [meant]));

    [Theory]
    [InlineData("anticlockwise")]
    [InlineData("counterclockwise")]
    [InlineData("ccw")]
    public void The_trades_words_for_the_way_of_turning_are_understood(string word)
    {
        var usual = TestPanels.Load("connector J1 { pins ; spiral 7 rings 1 6 counter-clockwise on front of pins }");
        var other = TestPanels.Load($"connector J1 {{ pins ; spiral 7 rings 1 6 {word} on front of pins }}");
        Assert.Equal(((Schematic.Model.Connector)usual.Parts[0]).Insert.Contacts.AsEnumerable(), ((Schematic.Model.Connector)other.Parts[0]).Insert.Contacts);
    }

    [Theory]
    [InlineData("anticlokwise")]
    [InlineData("antclockwise")]
    [InlineData("counterclokwise")]
    [InlineData("anti-clokwise")]
    public void A_misspelt_way_of_turning_proposes_the_way_meant(string word) => MarkedText.Gives(
        $"connector J1 {{ pins ; spiral 7 rings 1 6 [[{word}]] on front of pins }}",
        $"syntax: `{word}` is not known here. -> Did you mean `counter-clockwise`?");
}
