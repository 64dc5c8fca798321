using System.Text;
using Xunit;

namespace Schematic.Tests.Cli;

public sealed class FormatCommandTests : IDisposable
{
    private const string Untidy = "net   RTN    J1:1   X1:1 # return\nconnector J1 { pins ;strip 1 }\nterminals X1 {1}\n";

    private readonly CliRun _cli = new();

    public void Dispose() => _cli.Dispose();

    [Fact]
    public void The_usual_form_goes_to_standard_output_and_the_file_stays()
    {
        Assert.Equal(0, _cli.Run("format", _cli.Write("a.panel", Untidy)));
        Assert.Contains("# return", _cli.Out, StringComparison.Ordinal);
        Assert.NotEqual(Untidy, _cli.Out);
        Assert.Equal(Untidy, Encoding.UTF8.GetString(_cli.Read("a.panel")));
    }

    [Fact]
    public void Writing_changes_the_file_once()
    {
        _cli.Write("sub/a.panel", Untidy);
        Assert.Equal(1, _cli.Run("format", "sub/a.panel", "--check"));
        Assert.Equal("sub/a.panel is not in the usual form.\n", _cli.Out);
        Assert.Equal(0, _cli.Run("format", "sub/a.panel", "--write"));
        Assert.Equal("sub/a.panel\n", _cli.Out);
        Assert.Equal(0, _cli.Run("format", "sub/a.panel", "--check"));
        Assert.Equal(0, _cli.Run("format", "sub/a.panel", "--write"));
        Assert.Equal("", _cli.Out);
        Assert.Equal(["a.panel"], _cli.Files("sub"));
    }

    [Fact]
    public void Standard_input_is_formatted_and_cannot_be_rewritten()
    {
        Assert.Equal(0, _cli.RunWith(Encoding.UTF8.GetBytes(Untidy), "format", "-"));
        Assert.Contains("# return", _cli.Out, StringComparison.Ordinal);
        Assert.Equal(2, _cli.RunWith(Encoding.UTF8.GetBytes(Untidy), "format", "-", "--write"));
    }

    [Fact]
    public void A_statement_with_errors_is_left_as_it_is_and_the_errors_are_printed()
    {
        Assert.Equal(1, _cli.Run("format", _cli.Write("a.panel", "net   (((\nbuild   2\n"), "--write"));
        Assert.Equal("a.panel\n", _cli.Out);
        Assert.Contains("a.panel:1:", _cli.Error, StringComparison.Ordinal);
        Assert.EndsWith("Statements with errors are left as they are.\n", _cli.Error, StringComparison.Ordinal);
        Assert.Equal("net   (((\nbuild 2\n", Encoding.UTF8.GetString(_cli.Read("a.panel")));
    }

    [Fact]
    public void A_word_that_gives_way_to_the_usual_one_is_told()
    {
        Assert.Equal(0, _cli.Run("format", _cli.Write("a.panel", "connector J1 { pins ; spiral 7 ccw on front of pins }\n")));
        Assert.Equal("line 1: ccw is written counter-clockwise here\n", _cli.Error);
        Assert.Equal("connector J1 { pins ; spiral 7 counter-clockwise on front of pins }\n", _cli.Out);
    }

    [Fact]
    public void Bytes_that_are_no_text_are_never_written_over()
    {
        byte[] bytes = [.. Encoding.UTF8.GetBytes("title   \"a"), 0xFF, .. Encoding.UTF8.GetBytes("\"\n")];
        Assert.Equal(1, _cli.Run("format", _cli.Write("a.panel", bytes), "--write"));
        Assert.Equal(bytes, _cli.Read("a.panel"));
    }
}
