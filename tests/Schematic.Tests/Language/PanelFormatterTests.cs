using Schematic.Language;
using Xunit;

namespace Schematic.Tests.Language;

public class PanelFormatterTests
{
    [Fact]
    public void Neighbouring_lines_stand_in_columns_and_comments_at_their_side()
    {
        const string Untidy = """


            title   "Demo"
            connector J1 "unit" {
            pins;   spiral 7   rings 1 6   from centre # as found
                  key top
            }


            # the harness
            lamp DS1 28 V 40 mA {J1:1 J1:2}
            solenoid L1 "lock"   28 V   0.7 A {J1:3 J1:4 ;}  # the lock
            wire W1 22 AWG black 450 mm J1:5 -> J1:6 # return
            wire W10 2/0 AWG white/blue 50 mm   J1:6 -> J1:7;;
            """;
        const string Tidy = """
            title "Demo"
            connector J1 "unit" {
              pins ; spiral 7  rings 1 6  from centre  # as found
              key  top
            }

            # the harness
            lamp     DS1  28 V 40 mA          { J1:1 J1:2 }
            solenoid L1   "lock"  28 V  0.7 A { J1:3 J1:4 }         # the lock
            wire     W1   22 AWG  black       450 mm  J1:5 -> J1:6  # return
            wire     W10  2/0 AWG white/blue  50 mm   J1:6 -> J1:7

            """;
        Assert.Equal(Tidy, PanelFormatter.Format(Untidy));
    }

    [Fact]
    public void Rows_of_a_gang_stand_in_columns()
    {
        const string Untidy = """
            actuator LEVER { normal rest; reverse }
            poles S1..S3 changeover on LEVER {
              common J1:1 10 100
              normal J1:2,20,200
              reverse J1:3 30 300
            }
            connector J1 { pins ; grid 100 by 4 by-rows on front of pins }
            """;
        const string Tidy = """
            actuator LEVER { normal rest ; reverse }
            poles S1..S3 changeover on LEVER {
              common  J1:1 10 100
              normal  J1:2,20,200
              reverse J1:3 30 300
            }
            connector J1 { pins ; grid 100 by 4 by-rows on front of pins }

            """;
        Assert.Equal(Tidy, PanelFormatter.Format(Untidy));
    }

    [Fact]
    public void Columns_end_where_a_condition_begins()
    {
        const string Text = """
            expect A1:IN1 low  when LEVER reverse and GRIP centre
            expect A1:IN2 high when LEVER normal and GRIP left

            """;
        Assert.Equal(Text, PanelFormatter.Format(Text));
    }

    [Theory]
    [InlineData("lamp   DS1   28 V  40")]
    [InlineData("title   \"open")]
    [InlineData("connector   J1 {")]
    [InlineData("lmap   DS1")]
    [InlineData("title   \"a\"\0")]
    public void A_text_with_errors_comes_back_unchanged(string text)
    {
        if (text.EndsWith("40", StringComparison.Ordinal)) text += " }";
        Assert.Equal(text, PanelFormatter.Format(text));
    }

    [Fact]
    public void Line_ends_become_plain_and_the_last_line_gets_one()
    {
        Assert.Equal("title \"a\"\nbuild 2\n", PanelFormatter.Format("title \"a\"\r\nbuild 2"));
        Assert.Equal("", PanelFormatter.Format("\n\n"));
        Assert.Equal("# only a comment\n", PanelFormatter.Format("   # only a comment   "));
    }

    [Fact]
    public void Marks_of_the_language_inside_strings_and_comments_are_left_alone()
    {
        const string Text = "note \"a ; b  { c } # d , e\"  # f ; g  { \"\n";
        Assert.Equal(Text, PanelFormatter.Format(Text));
    }
}
