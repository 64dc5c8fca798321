using System.Collections.Immutable;
using Schematic.Binding;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Binding;

/// <summary>Files as bytes: what is no text, where files may lie, how deep they may use each other, what is read again while one is edited.</summary>
public sealed class FileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("schematic-files-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_byte_order_mark_is_dropped()
    {
        var file = PanelBytes.Decode("a.panel", [0xEF, 0xBB, 0xBF, (byte)'x']);
        Assert.Equal(("x", PanelFileState.Opened, 0), (file.Text.Content, file.State, file.Diagnostics.Length));
        Assert.Equal("", PanelBytes.Decode("a.panel", [0xEF, 0xBB, 0xBF]).Text.Content);
        Assert.Equal(2, PanelBytes.Decode("a.panel", [0xEF, 0xBB]).Text.Content.Length);
    }

    [Theory]
    [InlineData(0xFF, 0xFE)]
    [InlineData(0xFE, 0xFF)]
    public void A_file_in_utf_16_is_one_finding(byte first, byte second)
    {
        var file = PanelBytes.Decode("a.panel", [first, second, 0x41, 0x00]);
        var finding = Assert.Single(file.Diagnostics);
        Assert.Equal(("unreadable-text", "The file is written in UTF-16.", "Save it as UTF-8.", ""), (finding.Rule, finding.Message, finding.Help, file.Text.Content));
    }

    [Fact]
    public void A_byte_that_is_no_text_is_told_where_it_stands_and_read_as_a_blank()
    {
        var file = PanelBytes.Decode("a.panel", [(byte)'a', 0xC3, 0xA4, 0xE4, (byte)'b', 0xC3, (byte)'c']);
        Assert.Equal("aä\uFFFDb\uFFFDc", file.Text.Content);
        Assert.Equal(
            ["2+1 The byte 0xE4 is no UTF-8.", "4+1 The byte 0xC3 is no UTF-8."],
            file.Diagnostics.Select(d => $"{d.Span.Span.Start}+{d.Span.Span.Length} {d.Message}"));
    }

    [Theory]
    [InlineData(20, "The byte 0xFF is no UTF-8.")]
    [InlineData(21, "The byte 0xFF is no UTF-8; 1 more follow.")]
    [InlineData(23, "The byte 0xFF is no UTF-8; 3 more follow.")]
    public void Of_many_such_bytes_twenty_are_told_and_the_others_counted(int count, string last)
    {
        var file = PanelBytes.Decode("a.panel", [(byte)'a', .. Enumerable.Repeat((byte)0xFF, count)]);
        Assert.Equal(20, file.Diagnostics.Length);
        Assert.All(file.Diagnostics[..^1], d => Assert.Equal("The byte 0xFF is no UTF-8.", d.Message));
        Assert.Equal(last, file.Diagnostics[^1].Message);
    }

    [Fact]
    public void A_fault_of_the_main_file_comes_at_its_place_among_the_others()
    {
        Write("main.panel", [.. "lamp DS1 0 V\n"u8, 0xE4, .. "\nlamp DS2 0 V\nuse \"b.panel\" as B\nuse \"a.panel\" as A\n"u8]);
        Write("a.panel", "lamp DS1 0 V\n\n\nlamp DS1 24 V\n"u8.ToArray());
        Write("b.panel", [.. "lamp DS2 0 V "u8, 0xE4]);
        Assert.Equal(
            [
                "main.panel:1:10 out-of-range", "main.panel:2:1 unreadable-text", "main.panel:3:10 out-of-range",
                "a.panel:1:10 out-of-range", "a.panel:4:6 duplicate-name", "b.panel:1:10 out-of-range", "b.panel:1:14 unreadable-text",
            ],
            PanelLoader.LoadFile(PathOf("main.panel")).Diagnostics.Select(d => $"{d.Span} {d.Rule}"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("  ")]
    [InlineData("a\0b")]
    [InlineData("none.panel")]
    public void A_main_file_that_is_not_there_is_a_finding(string name)
    {
        var result = PanelLoader.LoadFile(name.Length > 3 ? PathOf(name) : name);
        var finding = Assert.Single(result.Diagnostics);
        Assert.Equal(("missing-file", "Look at the path and its spelling."), (finding.Rule, finding.Help));
        Assert.EndsWith("is not there.", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_is_no_file_to_read()
    {
        Directory.CreateDirectory(PathOf("sub.panel"));
        Assert.EndsWith("cannot be read.", Assert.Single(PanelLoader.LoadFile(PathOf("sub.panel")).Diagnostics).Message, StringComparison.Ordinal);
        Assert.Equal(PanelFileState.Unreadable, new FolderPanelFiles(_folder).Open("main.panel", "sub.panel").State);
    }

    [Fact]
    public void A_file_has_at_most_sixteen_megabytes()
    {
        Assert.Equal(16 * 1024 * 1024, FolderPanelFiles.LargestFile);
        using (var large = File.Create(PathOf("large.panel"))) large.SetLength(FolderPanelFiles.LargestFile + 1);
        Assert.Equal(PanelFileState.Unreadable, new FolderPanelFiles(_folder).Open("main.panel", "large.panel").State);
        using (var large = File.OpenWrite(PathOf("large.panel"))) large.SetLength(FolderPanelFiles.LargestFile);
        Assert.Equal(PanelFileState.Opened, new FolderPanelFiles(_folder).Open("main.panel", "large.panel").State);
    }

    [Theory]
    [InlineData("main.panel", "sub/a.panel", "sub/a.panel", PanelFileState.Opened)]
    [InlineData("sub/a.panel", "a.panel", "sub/a.panel", PanelFileState.Opened)]
    [InlineData("sub/a.panel", "../main.panel", "main.panel", PanelFileState.Opened)]
    [InlineData("main.panel", "empty.panel", "empty.panel", PanelFileState.Opened)]
    [InlineData("main.panel", "none.panel", "none.panel", PanelFileState.Missing)]
    [InlineData("main.panel", "../none.panel", "../none.panel", PanelFileState.Outside)]
    [InlineData("main.panel", "..", "..", PanelFileState.Outside)]
    [InlineData("main.panel", "..none.panel", "..none.panel", PanelFileState.Missing)]
    [InlineData("main.panel", ".", ".", PanelFileState.Unreadable)]
    [InlineData("main.panel", "a\0b", "a\0b", PanelFileState.Unreadable)]
    public void A_path_starts_in_the_folder_of_the_file_that_uses_it(string user, string path, string shown, PanelFileState state)
    {
        Directory.CreateDirectory(PathOf("sub"));
        Write("sub/a.panel", "a"u8.ToArray());
        Write("main.panel", "m"u8.ToArray());
        Write("empty.panel", []);
        var file = new FolderPanelFiles(_folder).Open(user, path);
        Assert.Equal((shown, state), (file.Text.FileName, file.State));
    }

    [Fact]
    public void A_link_is_followed_before_it_is_decided_where_a_file_lies()
    {
        Directory.CreateDirectory(PathOf("in"));
        Write("out.panel", "o"u8.ToArray());
        File.CreateSymbolicLink(PathOf("in/link.panel"), "../out.panel");
        Directory.CreateSymbolicLink(PathOf("in/up"), "..");
        var files = new FolderPanelFiles(PathOf("in"));
        Assert.Equal([PanelFileState.Outside, PanelFileState.Outside], new[] { "link.panel", "up/out.panel" }.Select(p => files.Open("main.panel", p).State));
        var allowed = new FolderPanelFiles(PathOf("in"), allowOutside: true);
        Assert.Equal(["../out.panel: o", "../out.panel: o"], new[] { "link.panel", "up/out.panel" }.Select(p => allowed.Open("main.panel", p).Text).Select(t => $"{t.FileName}: {t.Content}"));
        Directory.CreateSymbolicLink(PathOf("linked"), "in");
        Write("in/own.panel", "i"u8.ToArray());
        Assert.Equal(("own.panel", PanelFileState.Opened), (new FolderPanelFiles(PathOf("linked")).Open("main.panel", "own.panel") is var own ? own.Text.FileName : "", own.State));
    }

    [Theory]
    [InlineData(31, 0)]
    [InlineData(32, 1)]
    public void Files_use_each_other_at_most_thirty_two_deep(int uses, int findings)
    {
        var files = Enumerable.Range(1, uses).Select(i => ($"f{i}.panel", i < uses ? $"use \"f{i + 1}.panel\" as U" : "lamp DS1 24 V 40 mA")).ToArray();
        var result = TestPanels.Read("use \"f1.panel\" as U", files);
        Assert.Equal(findings, result.Diagnostics.Length);
        Assert.Equal(1 - findings, result.Panel.Parts.Length);
        Assert.All(result.Diagnostics, d => Assert.Equal("out-of-range: More than 32 files are used in all.", $"{d.Rule}: {d.Message}"));
    }

    [Theory]
    [InlineData(1000, 0)]
    [InlineData(1001, 1)]
    public void A_thousand_files_are_used_in_all(int uses, int findings)
    {
        var result = TestPanels.Read(string.Join('\n', Enumerable.Range(1, uses).Select(i => $"use \"f.panel\" as U{i}")), ("f.panel", "lamp DS1 24 V 40 mA"));
        Assert.Equal((1000, findings), (result.Panel.Parts.Length, result.Diagnostics.Length));
    }

    [Fact]
    public void Readings_that_cannot_be_opened_are_told_at_their_name()
    {
        Directory.CreateDirectory(PathOf("folder"));
        Write("kept.readings", [.. "a reading"u8, 0xE4]);
        Write("main.panel", "readings \"none.readings\" ; readings \"../up.readings\" ; readings \"folder\" ; readings \"kept.readings\" ; use \"used.panel\" as U"u8.ToArray());
        Write("used.panel", "readings \"others.readings\""u8.ToArray());
        var result = PanelLoader.LoadFile(PathOf("main.panel"));
        Assert.Equal(
            [
                "main.panel:1:10 missing-file: The file \"none.readings\" is not there.", "main.panel:1:37 outside-folder: The file \"../up.readings\" lies outside the folder of the main file.",
                "main.panel:1:65 missing-file: The file \"folder\" cannot be read.", "kept.readings:1:10 unreadable-text: The byte 0xE4 is no UTF-8.",
            ],
            result.Diagnostics.Select(d => $"{d.Span} {d.Rule}: {d.Message}"));
        Assert.Equal("kept.readings", Assert.Single(result.Panel.Readings).Text.FileName);
    }

    [Fact]
    public void What_bears_the_prefix_of_a_file_that_could_not_be_read_is_not_reported_as_well()
    {
        var result = TestPanels.Read("use \"none.panel\" as U\nuse \"f.panel\" as V\nterminals X1 { 1..2 }\nnet A U.J1:1 X1:1\nnet B V.U.J1:1 V.J1:1 X1:2", ("f.panel", "use \"gone.panel\" as U\nterminals X1 { 1..2 }\nnet A U.J1:1 X1:1"));
        Assert.Equal(
            ["missing-file: The file \"none.panel\" is not there.", "unknown-name: A part named `V.J1` is not declared.", "missing-file: The file \"gone.panel\" is not there."],
            result.Diagnostics.Select(d => $"{d.Rule}: {d.Message}"));
    }

    [Fact]
    public void In_a_used_file_the_nearest_of_its_own_names_is_proposed()
    {
        const string used = "actuator LEVER { a rest ; b }\nswitch S1 make on LEVR\nuse \"inner.panel\" as IN";
        var result = TestPanels.Read("use \"f.panel\" as U\nactuator LEVAR { a rest ; b }\nswitch S2 make on U.LEVR\nswitch S3 make on U.IN.LEVR", ("f.panel", used), ("inner.panel", "actuator LEVE { a rest ; b }\nswitch S1 make on LEVVE"));
        Assert.Equal(
            ["main.panel:3 Did you mean `U.LEVER`?", "main.panel:4 Did you mean `U.IN.LEVE`?", "f.panel:2 Did you mean `LEVER`?", "inner.panel:2 Did you mean `LEVE`?"],
            result.Diagnostics.Select(d => $"{d.Span.Source.FileName}:{d.Span.ToString().Split(':')[1]} {d.Help}"));
    }

    [Fact]
    public void What_did_not_change_while_a_file_is_edited_is_not_read_again()
    {
        var files = new MemoryPanelFiles(ImmutableDictionary<string, string>.Empty.Add("f.panel", "lamp DS1 24 V 40 mA"));
        var text = new SourceText("main.panel", "use \"f.panel\" as U\nfuse F1 1 A");
        var first = PanelLoader.LoadNext(text, files, null);
        var same = PanelLoader.LoadNext(text, files, first);
        Assert.Same(first.Syntaxes[0], same.Syntaxes[0]);
        var next = PanelLoader.LoadNext(new SourceText("main.panel", "use \"f.panel\" as U\nfuse F1 2 A"), files, same);
        Assert.Equal((2.0, 1), (Assert.IsType<Fuse>(next.Panel.Parts[1]).RatedAmps, next.Used.Length));
        Assert.Empty(next.Diagnostics.Where(d => d.Severity == Severity.Error));
    }

    private string PathOf(string name) => Path.Combine(_folder, name);

    private void Write(string name, byte[] bytes) => File.WriteAllBytes(PathOf(name), bytes);
}
