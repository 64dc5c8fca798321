using System.Buffers.Binary;
using System.Text;

namespace Schematic.Fonts;

/// <summary>
/// Cuts a face down to the characters that are used, so that a sheet can carry its own lettering. Kept are outlines, advances
/// and the character map; left out are hinting programs, kerning, ligatures and glyph names. The same characters give the
/// same bytes.
/// </summary>
internal static class FontSubset
{
    // Bits of a composite glyph's component record, OpenType specification, glyf table.
    private const int WordArguments = 0x0001;
    private const int OneScale = 0x0008;
    private const int MoreComponents = 0x0020;
    private const int TwoScales = 0x0040;
    private const int FourScales = 0x0080;
    private const int HasInstructions = 0x0100;

    /// <summary>A TrueType file with the glyphs of the given code points and the one for missing characters.</summary>
    public static byte[] Of(FontFile font, IEnumerable<int> codePoints, string family)
    {
        var map = codePoints.Distinct().Where(c => font.GlyphOf(c) != 0).Order()
            .Select(c => (Character: c, Glyph: font.GlyphOf(c))).ToList();
        var glyphs = WithComponents(font, map.Select(m => m.Glyph));
        var newNumber = glyphs.Select((glyph, i) => (glyph, i)).ToDictionary(p => p.glyph, p => p.i);
        var (outlines, offsets) = Outlines(font, glyphs, newNumber);
        return Assemble(
        [
            ("OS/2", font.Table("OS/2").ToArray()),
            ("cmap", CharacterMap(map, newNumber)),
            ("glyf", outlines),
            ("head", Changed(font.Table("head"), (8, 0), (10, 0), (50, 1))),
            ("hhea", Changed(font.Table("hhea"), (34, glyphs.Count))),
            ("hmtx", [.. glyphs.SelectMany(g => font.MetricsOf(g).ToArray())]),
            ("loca", offsets),
            ("maxp", Changed(font.Table("maxp"), (4, glyphs.Count), (14, 1), (16, 0), (18, 0), (20, 0), (22, 0), (24, 0), (26, 0))),
            ("name", Names(family)),
            ("post", PostScript(font)),
        ]);
    }

    /// <summary>Glyph zero, the wanted glyphs, and whatever they are composed of, in a stable order.</summary>
    private static List<int> WithComponents(FontFile font, IEnumerable<int> wanted)
    {
        var glyphs = new List<int> { 0 };
        var seen = new HashSet<int> { 0 };
        foreach (var glyph in wanted)
        {
            if (seen.Add(glyph)) glyphs.Add(glyph);
        }

        for (var i = 0; i < glyphs.Count; i++)
        {
            foreach (var (at, _) in Components(font.OutlineOf(glyphs[i]).ToArray()))
            {
                var part = FontFile.U16(font.OutlineOf(glyphs[i]), at + 2);
                if (seen.Add(part)) glyphs.Add(part);
            }
        }

        return glyphs;
    }

    /// <summary>Where each component record of a composite glyph begins and how long it is; none for a simple glyph.</summary>
    private static IEnumerable<(int At, int Length)> Components(byte[] outline)
    {
        if (outline.Length == 0 || FontFile.I16(outline, 0) >= 0) yield break;
        var at = 10;
        int flags;
        do
        {
            flags = FontFile.U16(outline, at);
            var length = 4 + ((flags & WordArguments) != 0 ? 4 : 2)
                + ((flags & OneScale) != 0 ? 2 : (flags & TwoScales) != 0 ? 4 : (flags & FourScales) != 0 ? 8 : 0);
            yield return (at, length);
            at += length;
        }
        while ((flags & MoreComponents) != 0);
    }

    private static (byte[] Outlines, byte[] Offsets) Outlines(FontFile font, List<int> glyphs, Dictionary<int, int> newNumber)
    {
        using var outlines = new MemoryStream();
        var offsets = new byte[4 * (glyphs.Count + 1)];
        for (var i = 0; i < glyphs.Count; i++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(offsets.AsSpan(4 * i), (uint)outlines.Length);
            outlines.Write(Unhinted(font.OutlineOf(glyphs[i]).ToArray(), newNumber));
            while (outlines.Length % 4 != 0) outlines.WriteByte(0);
        }

        BinaryPrimitives.WriteUInt32BigEndian(offsets.AsSpan(4 * glyphs.Count), (uint)outlines.Length);
        return (outlines.ToArray(), offsets);
    }

    /// <summary>The outline without its hinting program, its components under their new numbers.</summary>
    private static byte[] Unhinted(byte[] outline, Dictionary<int, int> newNumber)
    {
        if (outline.Length == 0) return outline;
        var contours = FontFile.I16(outline, 0);
        if (contours >= 0)
        {
            var at = 10 + (2 * contours);
            var instructions = FontFile.U16(outline, at);
            return [.. outline[..at], 0, 0, .. outline[(at + 2 + instructions)..]];
        }

        var end = 10;
        foreach (var (at, length) in Components(outline))
        {
            var flags = FontFile.U16(outline, at) & ~HasInstructions;
            var part = newNumber[FontFile.U16(outline, at + 2)];
            BinaryPrimitives.WriteUInt16BigEndian(outline.AsSpan(at), (ushort)flags);
            BinaryPrimitives.WriteUInt16BigEndian(outline.AsSpan(at + 2), (ushort)part);
            end = at + length;
        }

        return outline[..end];
    }

    /// <summary>A character map of format 4, a segment for each run of characters with consecutive glyphs.</summary>
    private static byte[] CharacterMap(List<(int Character, int Glyph)> map, Dictionary<int, int> newNumber)
    {
        var segments = new List<(int First, int Last, int Glyph)>();
        foreach (var (character, glyph) in map)
        {
            var number = newNumber[glyph];
            if (segments.Count > 0 && segments[^1] is var last && character == last.Last + 1
                && number == last.Glyph + (character - last.First))
            {
                segments[^1] = last with { Last = character };
            }
            else
            {
                segments.Add((character, character, number));
            }
        }

        segments.Add((0xFFFF, 0xFFFF, 0));
        var power = 1 << (int)Math.Log2(segments.Count);
        var output = new Bytes();
        output.U16(0, 1, 3, 1).U32(12);
        output.U16(4, 16 + (8 * segments.Count), 0, 2 * segments.Count, 2 * power, (int)Math.Log2(power), 2 * (segments.Count - power));
        foreach (var s in segments) output.U16(s.Last);
        output.U16(0);
        foreach (var s in segments) output.U16(s.First);
        foreach (var s in segments) output.U16((s.First == 0xFFFF ? 1 : s.Glyph - s.First) & 0xFFFF);
        foreach (var _ in segments) output.U16(0);
        return output.ToArray();
    }

    private static byte[] Names(string family)
    {
        const string licence = "Made from IBM Plex Sans Condensed. Copyright 2017 IBM Corp. SIL Open Font License 1.1.";
        (int Id, string Text)[] names = [(0, licence), (1, family), (2, "Regular"), (4, family), (6, family.Replace(" ", "", StringComparison.Ordinal))];
        var output = new Bytes();
        output.U16(0, names.Length, 6 + (12 * names.Length));
        var offset = 0;
        foreach (var (id, text) in names)
        {
            output.U16(3, 1, 0x409, id, 2 * text.Length, offset);
            offset += 2 * text.Length;
        }

        foreach (var (_, text) in names) output.Raw(Encoding.BigEndianUnicode.GetBytes(text));
        return output.ToArray();
    }

    /// <summary>The post table of version 3: no glyph names.</summary>
    private static byte[] PostScript(FontFile font)
    {
        var post = font.Table("post")[..32].ToArray();
        BinaryPrimitives.WriteUInt32BigEndian(post, 0x00030000);
        return post;
    }

    private static byte[] Changed(ReadOnlySpan<byte> table, params ReadOnlySpan<(int At, int Value)> changes)
    {
        var copy = table.ToArray();
        foreach (var (at, value) in changes) BinaryPrimitives.WriteUInt16BigEndian(copy.AsSpan(at), (ushort)value);
        return copy;
    }

    private static byte[] Assemble(ReadOnlySpan<(string Tag, byte[] Data)> tables)
    {
        var power = 1 << (int)Math.Log2(tables.Length);
        var head = new Bytes();
        head.U32(0x00010000).U16(tables.Length, 16 * power, (int)Math.Log2(power), 16 * (tables.Length - power));
        var body = new Bytes();
        var start = 12 + (16 * tables.Length);
        var headAt = 0;
        foreach (var (tag, data) in tables)
        {
            if (tag == "head") headAt = start + body.Length;
            head.Raw(Encoding.ASCII.GetBytes(tag)).U32(Checksum(data)).U32((uint)(start + body.Length)).U32((uint)data.Length);
            body.Raw(data);
            while (body.Length % 4 != 0) body.Raw([0]);
        }

        byte[] file = [.. head.ToArray(), .. body.ToArray()];
        BinaryPrimitives.WriteUInt32BigEndian(file.AsSpan(headAt + 8), 0xB1B0AFBA - Checksum(file));
        return file;
    }

    private static uint Checksum(ReadOnlySpan<byte> data)
    {
        uint sum = 0;
        for (var i = 0; i < data.Length; i++) sum += (uint)data[i] << (24 - (8 * (i % 4)));
        return sum;
    }

    /// <summary>Big-endian bytes being written.</summary>
    private sealed class Bytes
    {
        private readonly List<byte> _data = [];

        public int Length => _data.Count;

        public Bytes U16(params ReadOnlySpan<int> values)
        {
            foreach (var v in values) _data.AddRange([(byte)(v >> 8), (byte)v]);
            return this;
        }

        public Bytes U32(uint v)
        {
            _data.AddRange([(byte)(v >> 24), (byte)(v >> 16), (byte)(v >> 8), (byte)v]);
            return this;
        }

        public Bytes Raw(ReadOnlySpan<byte> bytes)
        {
            _data.AddRange(bytes);
            return this;
        }

        public byte[] ToArray() => [.. _data];
    }
}
