using System.Collections.Immutable;
using Schematic.Binding;
using Schematic.Editor;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Editor;

/// <summary>A panel that is being edited, with the cursor where a bar (¦) stands.</summary>
internal sealed record EditorText(EditedPanel Panel, int Offset)
{
    public const string Unit = """
        title "Desk" number D-1
        connector J1 "desk unit" { pins ; spiral 7 rings 1 6 from centre clockwise on front of pins ; size 20 ; solder ; spare 7 }
        actuator LEVER "desk lever" { normal rest ; check ; reverse springs-to check }
        lamp DS1 "proved" 24 V 40 mA { J1:1 J1:2 }
        solenoid L1 24 V 0.5 A operates 18 V { J1:3 J1:4 }
        switch S1 make on LEVER when reverse { J1:5 J1:6 }
        lock LEVER at normal unless L1 energised
        connector P1 "plug" { sockets ; mates J1 ; size 20 ; solder }
        supply PS1 24 V limit 1 A { + - }
        wire W1 22 AWG red 300 mm PS1:+ -> P1:1
        wire W2 22 AWG black 300 mm PS1:- -> P1:2
        net LAMP J1:1 P1:1

        """;

    public static EditorText Read(string marked, params (string Name, string Text)[] files)
    {
        var offset = marked.IndexOf('¦', StringComparison.Ordinal);
        Assert.True(offset >= 0, "The text has no cursor.");
        return new EditorText(Open("main.panel", marked.Remove(offset, 1), files), offset);
    }

    public static EditedPanel Open(string name, string text, params (string Name, string Text)[] files) => EditedPanel.Read(
        PanelFile.Opened(new SourceText(name, text)),
        new MemoryPanelFiles(files.ToImmutableDictionary(f => f.Name, f => f.Text, StringComparer.Ordinal)));

    public Mention Mention => Panel.Mentions.At("main.panel", Offset) ?? throw new InvalidOperationException("Nothing is named there.");

    public List<string> Proposed => [.. Completer.At(Panel, Offset).Select(p => p.Word)];
}
