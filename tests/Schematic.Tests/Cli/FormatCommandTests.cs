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

    // A killed run may have come just before or just after the file was put in place: the next clears either way.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_a_killed_run_left_beside_the_file_is_cleared(bool isWrittenAlready)
    {
        _cli.Write("sub/a.panel", Untidy);
        if (isWrittenAlready) Assert.Equal(0, _cli.Run("format", "sub/a.panel", "--write"));
        _cli.Write("sub/a.panel.2147483646.part", "half");
        _cli.Write("sub/b.panel.2147483646.part", "of another file");
        Assert.Equal(0, _cli.Run("format", "sub/a.panel", "--write"));
        Assert.Equal(["a.panel", "b.panel.2147483646.part"], _cli.Files("sub"));
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
    public void A_link_stays_a_link_and_a_file_keeps_its_permissions()
    {
        if (OperatingSystem.IsWindows()) return;
        var real = Path.Combine(_cli.Folder, _cli.Write("real.panel", "build   2\n"));
        File.SetUnixFileMode(real, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        File.CreateSymbolicLink(Path.Combine(_cli.Folder, "link.panel"), "real.panel");
        Assert.Equal(0, _cli.Run("format", "link.panel", "--write"));
        Assert.Equal("real.panel", new FileInfo(Path.Combine(_cli.Folder, "link.panel")).LinkTarget);
        Assert.Equal("build 2\n"u8.ToArray(), _cli.Read("real.panel"));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(real));

        File.WriteAllText(real, "build   3\n");
        File.SetUnixFileMode(real, UnixFileMode.UserRead);
        Assert.Equal(2, _cli.Run("format", "real.panel", "--write"));
        Assert.Equal("schematic: 'real.panel' may not be written: it is read-only.\n", _cli.Error);
        Assert.Equal("build   3\n"u8.ToArray(), _cli.Read("real.panel"));
    }

    [Fact]
    public void Bytes_that_are_no_text_are_never_written_over()
    {
        byte[] bytes = [.. Encoding.UTF8.GetBytes("title   \"a"), 0xFF, .. Encoding.UTF8.GetBytes("\"\n")];
        Assert.Equal(1, _cli.Run("format", _cli.Write("a.panel", bytes), "--write"));
        Assert.Equal(bytes, _cli.Read("a.panel"));
    }
}
