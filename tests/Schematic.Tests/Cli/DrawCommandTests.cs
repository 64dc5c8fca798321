using System.Collections.Immutable;
using System.Text;
using Schematic.Cli.Files;
using Schematic.Rendering;
using UglyToad.PdfPig;
using Xunit;

namespace Schematic.Tests.Cli;

public sealed class DrawCommandTests : IDisposable
{
    private readonly CliRun _cli = new();

    public void Dispose() => _cli.Dispose();

    [Fact]
    public void A_pack_is_written_to_the_folder_out_and_every_file_is_named()
    {
        Assert.Equal(0, _cli.Run("draw", _cli.Write("desk.panel", CliRun.CleanPanel)));
        var files = _cli.Files("out");
        Assert.Equal(files, _cli.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => Path.GetFileName(l)).Order(StringComparer.Ordinal));
        Assert.Contains("DK-1.pdf", files);
        var svgs = files.Count(f => f.EndsWith(".svg", StringComparison.Ordinal));
        Assert.Equal(svgs, files.Count(f => f.EndsWith(".png", StringComparison.Ordinal)));
        using var pdf = PdfDocument.Open(_cli.Read("out/DK-1.pdf"));
        Assert.Equal(svgs, pdf.NumberOfPages);
    }

    [Fact]
    public void Formats_are_chosen_by_name_in_either_notation()
    {
        _cli.Write("desk.panel", CliRun.CleanPanel);
        Assert.Equal(0, _cli.Run("draw", "desk.panel", "--out", "a", "--format", "svg,pdf"));
        Assert.Equal(0, _cli.Run("draw", "desk.panel", "--out", "b", "--format", "svg", "pdf"));
        Assert.Equal(_cli.Files("a"), _cli.Files("b"));
        Assert.DoesNotContain(_cli.Files("a"), f => f.EndsWith(".png", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_file_gives_the_same_bytes()
    {
        _cli.Write("desk.panel", CliRun.CleanPanel);
        _cli.Run("draw", "desk.panel", "--out", "a");
        _cli.Run("draw", "desk.panel", "--out", "b");
        Assert.All(_cli.Files("a"), f => Assert.Equal(_cli.Read($"a/{f}"), _cli.Read($"b/{f}")));
    }

    [Fact]
    public void What_the_drawing_finds_is_told_and_the_sheets_are_written()
    {
        const string panel = """
            connector J1 { pins ; strip 23 pitch 5.08 mm ; solder }
            connector J2 { pins ; strip 23 pitch 5.08 mm ; solder }
            connector J3 { pins ; strip 23 pitch 5.08 mm ; solder }
            splice SP1
            net ALL SP1:1 J1:1..23 J2:1..23 J3:1..23
            """;
        Assert.Equal(0, _cli.Run("draw", _cli.Write("large.panel", panel), "--format", "svg"));
        Assert.Contains("larger-than-sheet", _cli.Error, StringComparison.Ordinal);
        Assert.Contains("SP1 is larger than a wiring sheet of size A4", _cli.Error, StringComparison.Ordinal);
        Assert.NotEmpty(_cli.Files("out"));
    }

    [Fact]
    public void Without_a_drawing_number_the_files_are_named_after_the_panel_file()
    {
        _cli.Write("my desk.panel", CliRun.CleanPanel.Replace("number DK-1", "", StringComparison.Ordinal));
        Assert.Equal(0, _cli.Run("draw", "my desk.panel", "--format", "pdf"));
        Assert.Equal(["my-desk.pdf"], _cli.Files("out"));
    }

    [Fact]
    public void A_drawing_number_that_is_a_path_stays_in_the_folder()
    {
        _cli.Write("desk.panel", CliRun.CleanPanel.Replace("number DK-1", "number \"../../DK/1\"", StringComparison.Ordinal));
        Assert.Equal(0, _cli.Run("draw", "desk.panel", "--format", "pdf"));
        Assert.Equal(["DK-1.pdf"], _cli.Files("out"));
    }

    [Fact]
    public void Errors_stop_the_drawing()
    {
        Assert.Equal(1, _cli.Run("draw", _cli.Write("a.panel", CliRun.WrongPanel)));
        Assert.Empty(_cli.Files("out"));
        Assert.Equal("", _cli.Out);
        Assert.EndsWith("Nothing was drawn, because of the errors. --force draws sheets that are stamped NOT CHECKED.\n", _cli.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Forced_sheets_are_all_stamped_and_list_the_findings()
    {
        Assert.Equal(1, _cli.Run("draw", _cli.Write("a.panel", CliRun.WrongPanel), "--force", "--format", "svg,pdf"));
        var sheets = _cli.Files("out").Where(f => f.EndsWith(".svg", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(sheets);
        Assert.All(sheets, s => Assert.Contains("NOT CHECKED", Encoding.UTF8.GetString(_cli.Read($"out/{s}")), StringComparison.Ordinal));
        Assert.Contains("bridged-part", Encoding.UTF8.GetString(_cli.Read($"out/{sheets[0]}")), StringComparison.Ordinal);
        using var pdf = PdfDocument.Open(_cli.Read("out/a.pdf"));
        Assert.All(pdf.GetPages(), p => Assert.Contains("CHECKED", p.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_checked_sheet_is_not_stamped()
    {
        _cli.Run("draw", _cli.Write("desk.panel", CliRun.CleanPanel), "--format", "svg");
        Assert.All(_cli.Files("out"), s => Assert.DoesNotContain("NOT CHECKED", Encoding.UTF8.GetString(_cli.Read($"out/{s}")), StringComparison.Ordinal));
    }

    [Fact]
    public void A_file_in_place_of_the_folder_is_one_sentence_and_exits_with_2()
    {
        _cli.Write("desk.panel", CliRun.CleanPanel);
        _cli.Write("out", "a file");
        Assert.Equal(2, _cli.Run("draw", "desk.panel", "--format", "svg"));
        Assert.Equal("schematic: 'out' is a file; --out names a folder.\n", _cli.Error);
        Assert.Equal(2, _cli.Run("draw", "desk.panel", "--format", "svg", "--out", "out/deeper"));
        Assert.StartsWith("schematic: 'out/deeper", _cli.Error, StringComparison.Ordinal);
        Assert.Single(_cli.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public void A_folder_in_place_of_a_sheet_is_one_sentence_and_leaves_no_half_file()
    {
        _cli.Write("desk.panel", CliRun.CleanPanel);
        Directory.CreateDirectory(Path.Combine(_cli.Folder, "out/DK-1.pdf"));
        Assert.Equal(2, _cli.Run("draw", "desk.panel", "--format", "pdf"));
        Assert.Equal("schematic: 'out/DK-1.pdf' cannot be written: it is a folder.\n", _cli.Error);
        Assert.Empty(_cli.Files("out"));
    }

    [Fact]
    public void A_folder_without_permission_is_one_sentence_and_exits_with_2()
    {
        if (OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess) return; // Root may write everywhere.
        _cli.Write("desk.panel", CliRun.CleanPanel);
        var folder = Directory.CreateDirectory(Path.Combine(_cli.Folder, "out")).FullName;
        File.SetUnixFileMode(folder, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        Assert.Equal(2, _cli.Run("draw", "desk.panel", "--format", "pdf"));
        File.SetUnixFileMode(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        Assert.Equal("schematic: 'out/DK-1.pdf' may not be written: permission is missing.\n", _cli.Error);
    }

    [Fact]
    public void Older_sheets_of_the_same_name_are_told()
    {
        _cli.Write("out/DK-1-19-schematic.svg", "old");
        _cli.Write("out/other.svg", "not ours");
        Assert.Equal(0, _cli.Run("draw", _cli.Write("desk.panel", CliRun.CleanPanel), "--format", "pdf"));
        Assert.Equal("schematic: out holds older sheets of the same name that were not written now: DK-1-19-schematic.svg\n", _cli.Error);
    }

    [Fact]
    public void A_list_with_check_sums_vouches_for_the_sheets()
    {
        _cli.Write("desk.panel", CliRun.CleanPanel);
        Assert.Equal(0, _cli.Run("draw", "desk.panel", "--format", "svg,pdf"));
        var lines = Encoding.UTF8.GetString(_cli.Read("out/DK-1-sheets.sha256")).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(_cli.Files("out").Where(f => f != "DK-1-sheets.sha256"), lines.Select(l => l[66..]).Order(StringComparer.Ordinal));
        Assert.All(lines, l => Assert.Equal(l[..64], Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(_cli.Read($"out/{l[66..]}")))));
    }

    /// <summary>One file vouches for itself; of two, one may be of yesterday.</summary>
    [Theory]
    [InlineData(1, false)]
    [InlineData(2, true)]
    [InlineData(3, true)]
    public void Two_files_are_enough_for_a_list(int files, bool isListed) => Assert.Equal(
        isListed, PackManifest.Behind("DK-1", Enumerable.Range(1, files).Select(i => new PackFile($"{i}.svg", [1]))).Any(f => f.Name == "DK-1" + PackManifest.Ending));

    [Fact]
    public void What_a_killed_draw_left_is_cleared_and_no_others()
    {
        // No process has this number: it lies above what any system gives.
        _cli.Write("out/DK-1.pdf.2147483646.part", "half");
        _cli.Write("out/DK-1-19-schematic.svg.2147483646.part", "half a sheet that the panel no longer has");
        _cli.Write("out/other.pdf.2147483646.part", "of somebody else");
        _cli.Write($"out/DK-1.pdf.{Environment.ProcessId}.part.keep", "no temporary name");
        Assert.Equal(0, _cli.Run("draw", _cli.Write("desk.panel", CliRun.CleanPanel), "--format", "pdf"));
        Assert.Equal([$"DK-1.pdf", $"DK-1.pdf.{Environment.ProcessId}.part.keep", "other.pdf.2147483646.part"], _cli.Files("out"));
        Assert.Equal("", _cli.Error);
    }

    [Fact]
    public void An_empty_panel_has_nothing_to_draw()
    {
        Assert.Equal(2, _cli.Run("draw", _cli.Write("a.panel", "# nothing yet\n")));
        Assert.Equal("schematic: 'a.panel' has nothing to draw: it declares no part.\n", _cli.Error);
    }

    [Theory]
    [InlineData("--format", "bmp")]
    [InlineData("--dpi", "5")]
    [InlineData("--dpi", "many")]
    [InlineData("--nonsense", "x")]
    public void A_wrong_option_exits_with_2_and_writes_nothing(string option, string value)
    {
        Assert.Equal(2, _cli.Run("draw", _cli.Write("a.panel", CliRun.CleanPanel), option, value));
        Assert.Equal("", _cli.Out);
        Assert.NotEqual("", _cli.Error);
        Assert.Empty(_cli.Files("out"));
    }

    [Fact]
    public void The_resolution_sets_the_size_of_pictures()
    {
        _cli.Write("desk.panel", CliRun.CleanPanel);
        _cli.Run("draw", "desk.panel", "--format", "png", "--dpi", "50");
        using var picture = SkiaSharp.SKBitmap.Decode(_cli.Read("out/" + _cli.Files("out")[0]));
        Assert.Equal((int)Math.Round(297 / 25.4 * 50), picture.Width);
    }

    [Fact]
    public void The_face_of_one_connector_is_drawn_alone()
    {
        Assert.Equal(0, _cli.Run("face", _cli.Write("desk.panel", CliRun.CleanPanel), "J1", "--format", "svg"));
        Assert.All(_cli.Files("out"), f => Assert.StartsWith("DK-1-J1-", f, StringComparison.Ordinal));
        Assert.Contains(_cli.Files("out"), f => f.Contains("faces", StringComparison.Ordinal));
    }

    [Fact]
    public void A_face_of_an_unknown_connector_names_those_there_are()
    {
        Assert.Equal(2, _cli.Run("face", _cli.Write("desk.panel", CliRun.CleanPanel), "X1"));
        Assert.Equal("schematic: there is no connector 'X1'; there are J1.\n", _cli.Error);
    }

    [Fact]
    public void A_pack_is_replaced_whole_or_not_at_all()
    {
        _cli.Write("a.svg", "old a");
        _cli.Write("c.svg/in the way", "");
        ImmutableArray<PackFile> files = [new("a.svg", [1]), new("b.svg", [2]), new("c.svg", [3])];
        Assert.Equal("'out/c.svg' cannot be written: it is a folder.", AtomicFiles.Write(_cli.Folder, "out", files).Problem);
        Assert.Equal(["a.svg"], _cli.Files("."));
        Assert.Equal("old a", File.ReadAllText(Path.Combine(_cli.Folder, "a.svg")));
        Assert.Null(AtomicFiles.Write(_cli.Folder, "out", files[..2]).Problem);
        Assert.Equal(["a.svg", "b.svg"], _cli.Files("."));
        Assert.Equal([1], _cli.Read("a.svg"));
    }

    [Fact]
    public void What_has_not_changed_is_not_written_again_and_that_is_said()
    {
        var panel = _cli.Write("desk.panel", CliRun.CleanPanel);
        Assert.Equal(0, _cli.Run("draw", panel, "--format", "svg,pdf"));
        Assert.DoesNotContain("written again", _cli.Error, StringComparison.Ordinal);
        var names = _cli.Files("out");
        var old = new DateTime(2001, 1, 1, 0, 0, 0, DateTimeKind.Utc);
        foreach (var name in names) File.SetLastWriteTimeUtc(Path.Combine(_cli.Folder, "out", name), old);
        Assert.Equal(0, _cli.Run("draw", panel, "--format", "svg,pdf"));
        Assert.Equal("schematic: nothing changed; no file was written again.\n", _cli.Error);
        Assert.All(names, n => Assert.Equal(old, File.GetLastWriteTimeUtc(Path.Combine(_cli.Folder, "out", n))));

        // A sheet that was spoilt is mended; the list that vouches for it is put in place after it.
        _cli.Write($"out/{names[0]}", "spoilt");
        Assert.Equal(0, _cli.Run("draw", panel, "--format", "svg,pdf"));
        Assert.Equal($"schematic: {names.Length - 2} of {names.Length} files have not changed and were not written again.\n", _cli.Error);
        Assert.Equal(names, _cli.Files("out"));
        Assert.All(names, n => Assert.Equal(n == names[0] || n.EndsWith(PackManifest.Ending, StringComparison.Ordinal), File.GetLastWriteTimeUtc(Path.Combine(_cli.Folder, "out", n)) != old));
    }

    [Fact]
    public void A_file_that_is_open_in_a_viewer_is_replaced()
    {
        _cli.Write("a.svg", "old");
        using var viewer = File.Open(Path.Combine(_cli.Folder, "a.svg"), FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        Assert.Null(AtomicFiles.Write(_cli.Folder, "", [new("a.svg", "new"u8.ToArray())]).Problem);
        Assert.Equal("new", File.ReadAllText(Path.Combine(_cli.Folder, "a.svg")));
    }

    [Fact]
    public void What_a_killed_run_left_behind_does_no_harm()
    {
        _cli.Write("out/DK-1.pdf", "old");
        _cli.Write($"out/DK-1.pdf.999{AtomicFiles.TemporaryEnding}", "half");
        Assert.Equal(0, _cli.Run("draw", _cli.Write("desk.panel", CliRun.CleanPanel), "--format", "pdf"));
        Assert.StartsWith("%PDF", Encoding.ASCII.GetString(_cli.Read("out/DK-1.pdf")), StringComparison.Ordinal);
    }
}
