using System.Text;
using System.Text.Json;
using CsCheck;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Cli;

public sealed class CheckCommandTests : IDisposable
{
    private readonly CliRun _cli = new();

    public void Dispose() => _cli.Dispose();

    [Fact]
    public void A_clean_file_exits_with_0()
    {
        Assert.Equal(0, _cli.Run("check", _cli.Write("a.panel", CliRun.CleanPanel)));
        Assert.Equal(("nothing found\n", ""), (_cli.Out, _cli.Error));
    }

    [Fact]
    public void A_file_with_an_error_exits_with_1_and_prints_it()
    {
        Assert.Equal(1, _cli.Run("check", _cli.Write("sub/a.panel", CliRun.WrongPanel)));
        Assert.StartsWith("sub/a.panel:2:6: error bridged-part: ", _cli.Out, StringComparison.Ordinal);
        Assert.Equal("", _cli.Error);
    }

    [Fact]
    public void Warnings_alone_exit_with_0()
    {
        Assert.Equal(0, _cli.Run("check", _cli.Write("a.panel", CliRun.CleanPanel + "splice SP1\n")));
        Assert.Contains("warning unused-part", _cli.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void What_could_not_be_proved_exits_with_1_unless_that_is_accepted()
    {
        _cli.Write("a.panel", CliRun.UnprovedPanel);
        Assert.Equal(1, _cli.Run("check", "a.panel"));
        Assert.Contains("error proof-incomplete: Not proved: DS1, DS2,", _cli.Out, StringComparison.Ordinal);
        Assert.Equal(0, _cli.Run("check", "a.panel", "--accept-unproved"));
        Assert.Contains("warning proof-incomplete: Not proved: DS1, DS2,", _cli.Out, StringComparison.Ordinal);
        Assert.Equal(1, _cli.Run("check", _cli.Write("b.panel", CliRun.WrongPanel), "--accept-unproved"));
    }

    [Fact]
    public void A_hyphen_reads_standard_input()
    {
        Assert.Equal(1, _cli.RunWith(Encoding.UTF8.GetBytes(CliRun.WrongPanel), "check", "-"));
        Assert.StartsWith("-:2:6: error bridged-part: ", _cli.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Json_is_one_object_with_the_exit_code_unchanged()
    {
        Assert.Equal(1, _cli.Run("check", _cli.Write("a.panel", CliRun.WrongPanel), "--json"));
        using var json = JsonDocument.Parse(_cli.Out);
        Assert.Equal("a.panel", json.RootElement.GetProperty("file").GetString());
        Assert.Equal("bridged-part", json.RootElement.GetProperty("findings")[0].GetProperty("rule").GetString());
    }

    [Theory]
    [InlineData("nowhere.panel", "There is no file 'nowhere.panel'.")]
    [InlineData("no/such/folder.panel", "There is no file 'no/such/folder.panel'.")]
    [InlineData(".", "The file '.' cannot be read: it is a folder; name the panel file in it.")]
    [InlineData("a.panel/b.panel", "There is no file 'a.panel/b.panel'.")]
    public void A_file_that_cannot_be_read_is_one_sentence_and_exits_with_2(string name, string sentence)
    {
        _cli.Write("a.panel", CliRun.CleanPanel);
        Assert.Equal(2, _cli.Run("check", name));
        Assert.Equal(("", $"schematic: {sentence}\n"), (_cli.Out, _cli.Error));
    }

    [Fact]
    public void A_name_that_no_file_can_have_is_one_sentence_and_exits_with_2()
    {
        Assert.Equal(2, _cli.Run("check", "a\0b"));
        Assert.Equal(2, _cli.Run("check", new string('x', 5000)));
        Assert.Equal(2, _cli.Run("check", ""));
        AssertNoStackTrace();
    }

    /// <summary>A name that would colour the terminal, or turn what follows round, is shown as what it is.</summary>
    [Fact]
    public void A_name_that_steers_the_terminal_is_shown_as_what_it_is()
    {
        Assert.Equal(2, _cli.Run("check", "a\u001b[31m\u009b\u202e.panel"));
        Assert.Equal("schematic: There is no file 'a<U+001B>[31m<U+009B><U+202E>.panel'.\n", _cli.Error);
    }

    [Fact]
    public void An_empty_file_has_nothing_wrong_in_it() => Assert.Equal(0, _cli.Run("check", _cli.Write("a.panel", "")));

    [Fact]
    public void A_picture_is_no_panel_file()
    {
        byte[] picture = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 0x0D, 0x49, 0x48, 0x44, 0x52, 0xFF, 0xC3, 0x28];
        Assert.Equal(1, _cli.Run("check", _cli.Write("a.panel", picture)));
        AssertNoStackTrace();
    }

    [Fact]
    public void A_line_of_a_megabyte_is_reported_in_a_window()
    {
        Assert.Equal(1, _cli.Run("check", _cli.Write("a.panel", "net A " + new string('x', 1 << 20))));
        Assert.True(_cli.Out.Length < 20_000);
        AssertNoStackTrace();
    }

    [Fact]
    public void Bytes_of_any_kind_are_answered_with_findings_and_never_with_a_failure() =>
        Gen.Byte.Array[0, 300].Holds(
            bytes =>
            {
                using var cli = new CliRun();
                Assert.InRange(cli.RunWith(bytes, "check", "-"), 0, 1);
                Assert.Equal("", cli.Error);
            },
            count: 300);

    [Fact]
    public void Words_of_the_language_in_any_order_are_answered_with_findings_and_never_with_a_failure() =>
        Gen.Int[0, Words.Length - 1].Array[0, 40].Holds(
            picks =>
            {
                using var cli = new CliRun();
                var text = string.Join(' ', picks.Select(p => Words[p]));
                Assert.InRange(cli.RunWith(Encoding.UTF8.GetBytes(text), "check", "-"), 0, 1);
                Assert.Equal("", cli.Error);
            },
            count: 1000);

    private static readonly string[] Words =
    [
        "connector", "J1", "P1", "{", "}", "\n", "\n", ";", "pins", "strip", "3", "mates", "net", "wire", "W1", "J1:1", "J1:2", "->",
        "22 AWG", "lamp", "28 V", "40 mA", "supply", "board", "inputs", "IN1..IN2", "poles", "S1..S2", "changeover", "on", "LEVER",
        "actuator", "normal", "rest", "reverse", "lock", "unless", "expect", "never", "reaches", "spare", "1..9", "\"text\"", "#", "use",
        "as", "relay", "K1", "coil", "common", "springs-to", "jumper", "terminals", "cable", "core", ",", ":", "..", "-", "build",
    ];

    private void AssertNoStackTrace() => Assert.DoesNotContain("   at ", _cli.Out + _cli.Error, StringComparison.Ordinal);

    [Fact]
    public void A_stream_without_end_is_read_to_the_limit_and_no_further()
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var code = Schematic.Cli.CliApplication.Run(["check", "-"], output, error, new Endless(), _cli.Folder);
        Assert.Equal((2, "schematic: The file '-' cannot be read: it is larger than 16 MB.\n"), (code, error.ToString()));
    }

    private sealed class Endless : Stream
    {
        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get; set; }

        public override int Read(byte[] buffer, int offset, int count)
        {
            buffer.AsSpan(offset, count).Fill((byte)'#');
            return count;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
