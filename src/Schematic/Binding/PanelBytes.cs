using System.Text.Unicode;
using Schematic.Diagnostics;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>Turns the bytes of a panel file into text, strictly: what is no UTF-8 is reported where it stands.</summary>
public static class PanelBytes
{
    private const int MostFaults = 20;

    /// <summary>
    /// Decodes a file. A byte order mark is dropped. Bytes that are no UTF-8 become U+FFFD, which the language takes for a
    /// blank, so that everything else is still read.
    /// </summary>
    public static PanelFile Decode(string fileName, ReadOnlySpan<byte> bytes)
    {
        if (bytes is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..]) return Utf16(fileName);
        if (bytes is [0xEF, 0xBB, 0xBF, ..]) bytes = bytes[3..];
        var characters = new char[bytes.Length + 1];
        var length = 0;
        var faults = new List<(int Position, byte Value)>();
        var faultCount = 0;
        while (true)
        {
            Utf8.ToUtf16(bytes, characters.AsSpan(length), out var read, out var written, replaceInvalidSequences: false);
            length += written;
            bytes = bytes[read..];
            if (bytes.IsEmpty) break;
            if (++faultCount <= MostFaults) faults.Add((length, bytes[0]));
            characters[length++] = '\uFFFD';
            bytes = bytes[1..];
        }

        var source = new SourceText(fileName, new string(characters, 0, length));
        var more = faultCount - faults.Count;
        return PanelFile.Opened(
            source, [.. faults.Select((fault, i) => Fault(source, fault, i == faults.Count - 1 ? more : 0))]);
    }

    private static PanelFile Utf16(string fileName)
    {
        var source = new SourceText(fileName, "");
        return PanelFile.Opened(source, new Diagnostic(
            "unreadable-text", Severity.Error, "The file is written in UTF-16.", new SourceSpan(source, default))
        {
            Help = "Save it as UTF-8.",
        });
    }

    private static Diagnostic Fault(SourceText source, (int Position, byte Value) fault, int more) => new(
        "unreadable-text", Severity.Error,
        $"The byte 0x{fault.Value:X2} is no UTF-8" + (more > 0 ? $"; {more} more follow." : "."),
        new SourceSpan(source, new TextSpan(fault.Position, 1)))
    {
        Help = "Save the file as UTF-8, or write the character again.",
    };
}
