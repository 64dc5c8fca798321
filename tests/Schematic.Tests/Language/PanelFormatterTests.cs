using System.Globalization;
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
    [InlineData("lamp   DS1   28 V  40 }")]
    [InlineData("title   \"open")]
    [InlineData("connector   J1 {")]
    [InlineData("lmap   DS1")]
    [InlineData("title   \"a\"\0")]
    [InlineData("count ('-2')   {  \n  \"open \n }")]
    [InlineData("fuse   F1\u2028  1 A")]
    [InlineData("connector   J1 { strip 1  on front of pin pin }")]
    public void A_statement_that_cannot_be_read_stays_as_it_is(string statement)
    {
        Assert.Equal($"{statement}\n", PanelFormatter.Format(statement));
        Assert.Equal($"build 2\n{statement}\nfuse F1  1 A\n", PanelFormatter.Format($"build    2\n{statement}\nfuse   F1    1 A"));
    }

    /// <summary>Empty statements, a keyword without its name and a blank at the end: found among mutants.</summary>
    [Theory]
    [InlineData(";;connector  when ")]
    [InlineData(";;connector  when \n;; ;lamp DS1")]
    public void What_was_formatted_twice_once_is_done_after_once(string text)
    {
        var once = PanelFormatter.Format(text);
        Assert.Equal(once, PanelFormatter.Format(once));
    }

    [Theory]
    [InlineData('\u2028')]
    [InlineData('\u2029')]
    [InlineData('\u0085')]
    [InlineData('\v')]
    [InlineData('\f')]
    public void What_ends_no_line_for_the_reader_ends_none_for_the_formatter(char c)
    {
        var text = $"fuse F1 1 A   # spare{c}fuse F9 1 A\nnote \"a{c}  b\"\n";
        var formatted = PanelFormatter.Format(text);
        Assert.Single(TestPanels.Read(formatted).Panel.Parts);
        Assert.Contains($"# spare{c}fuse F9 1 A\n", formatted, StringComparison.Ordinal);
        Assert.Equal(TestPanels.Read(text).Panel.Notes.AsEnumerable(), TestPanels.Read(formatted).Panel.Notes);
    }

    [Fact]
    public void Words_of_the_trade_give_way_to_the_usual_ones_where_they_are_keywords_and_nowhere_else()
    {
        const string Text = """
            connector J1 "ccw" { female ; spiral 7 rings 1 6 anticlockwise on front of pins ; center }
            actuator KNOB { cw rest ; ccw }

            """;
        Assert.Equal(
            "sockets ; spiral 7 rings 1 6 counter-clockwise on front of pins ; centre",
            PanelFormatter.Format(Text).Split('{')[1].Split('}')[0].Trim());
        Assert.Contains("{ cw rest ; ccw }", PanelFormatter.Format(Text), StringComparison.Ordinal);
    }

    // A file of 100,000 lines must come to an end: what it takes grows with its lines and not with their square.
    [Theory]
    [InlineData("wire   W{0}   22 AWG red J1:1 ->   J1:2  # {0}\n")]
    [InlineData("lmap   DS{0} 24 V\n")]
    [InlineData("connector   J{0} { pins\n  strip   2 ; male }\n")]
    [InlineData("lamp DS{0} { \"open\n")]
    public void Four_times_the_lines_take_no_more_than_four_times_the_memory(string line)
    {
        long Taken(int lines)
        {
            var text = string.Concat(Enumerable.Range(1, lines).Select(i => line.Replace("{0}", i.ToString("D5", CultureInfo.InvariantCulture), StringComparison.Ordinal)));
            var before = GC.GetAllocatedBytesForCurrentThread();
            PanelFormatter.Format(text);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        Taken(10);
        Assert.InRange(Taken(1200) / (double)Taken(300), 3, 4.6);
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
