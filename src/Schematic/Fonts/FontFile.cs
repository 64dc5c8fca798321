using System.Buffers.Binary;
using System.Collections.Immutable;

namespace Schematic.Fonts;

/// <summary>
/// A TrueType font as its own tables state it: which character has which glyph, how far it advances, what it looks like.
/// Reads what the bundled faces have: 16-bit character maps and quadratic outlines (OpenType specification, tables cmap,
/// glyf, head, hhea, hmtx, loca, maxp).
/// </summary>
internal sealed class FontFile
{
    private static readonly Lazy<FontFile> RegularFace = new(() => Read(bold: false));
    private static readonly Lazy<FontFile> BoldFace = new(() => Read(bold: true));

    private readonly byte[] _data;
    private readonly Dictionary<string, Range> _tables = new(StringComparer.Ordinal);
    private readonly ushort[] _glyphOf = new ushort[char.MaxValue + 1];
    private readonly ushort[] _advances;
    private readonly bool _longOffsets;

    private FontFile(byte[] data)
    {
        _data = data;
        var count = U16(data, 4);
        for (var i = 0; i < count; i++)
        {
            var entry = data.AsSpan(12 + (16 * i), 16);
            var start = (int)BinaryPrimitives.ReadUInt32BigEndian(entry[8..]);
            var length = (int)BinaryPrimitives.ReadUInt32BigEndian(entry[12..]);
            _tables[System.Text.Encoding.ASCII.GetString(entry[..4])] = start..(start + length);
        }

        UnitsPerEm = U16(Table("head"), 18);
        _longOffsets = U16(Table("head"), 50) == 1;
        _advances = ReadAdvances();
        ReadCharacterMap();
        PlainUnits = [.. Enumerable.Range(' ', '~' - ' ' + 1).Select(c => _glyphOf[c] == 0 ? UnitsPerEm : AdvanceOf(_glyphOf[c]))];
    }

    /// <summary>The regular face.</summary>
    public static FontFile Regular => RegularFace.Value;

    /// <summary>The semibold face.</summary>
    public static FontFile Bold => BoldFace.Value;

    /// <summary>Font units in one em.</summary>
    public int UnitsPerEm { get; }

    /// <summary>How far the pen moves after each character from the blank to the tilde, in font units; one em for one that the face lacks.</summary>
    public ImmutableArray<int> PlainUnits { get; }

    /// <summary>The face of that weight.</summary>
    public static FontFile Of(bool bold) => bold ? Bold : Regular;

    /// <summary>The bytes of one table.</summary>
    public ReadOnlySpan<byte> Table(string tag) => _data.AsSpan(_tables[tag]);

    /// <summary>The glyph of a character, or zero (the face's own "missing" box).</summary>
    public int GlyphOf(int codePoint) => codePoint <= char.MaxValue ? _glyphOf[codePoint] : 0;

    /// <summary>How far the pen moves after a glyph, in font units.</summary>
    public int AdvanceOf(int glyph) => _advances[Math.Min(glyph, _advances.Length - 1)];

    /// <summary>The four bytes of horizontal metrics of a glyph: advance and left side bearing.</summary>
    public ReadOnlySpan<byte> MetricsOf(int glyph) => Table("hmtx").Slice(4 * glyph, 4);

    /// <summary>The outline of a glyph as it stands in the glyf table; empty for a blank.</summary>
    public ReadOnlySpan<byte> OutlineOf(int glyph)
    {
        var loca = Table("loca");
        var (from, to) = _longOffsets
            ? ((int)BinaryPrimitives.ReadUInt32BigEndian(loca[(4 * glyph)..]), (int)BinaryPrimitives.ReadUInt32BigEndian(loca[((4 * glyph) + 4)..]))
            : (2 * U16(loca, 2 * glyph), 2 * U16(loca, (2 * glyph) + 2));
        return Table("glyf")[from..to];
    }

    internal static ushort U16(ReadOnlySpan<byte> data, int at) => BinaryPrimitives.ReadUInt16BigEndian(data[at..]);

    internal static short I16(ReadOnlySpan<byte> data, int at) => BinaryPrimitives.ReadInt16BigEndian(data[at..]);

    private static FontFile Read(bool bold)
    {
        using var stream = BundledFonts.Open(bold);
        var data = new byte[stream.Length];
        stream.ReadExactly(data);
        return new FontFile(data);
    }

    private ushort[] ReadAdvances()
    {
        var metrics = Table("hmtx");
        var advances = new ushort[U16(Table("hhea"), 34)];
        for (var i = 0; i < advances.Length; i++) advances[i] = U16(metrics, 4 * i);
        return advances;
    }

    private void ReadCharacterMap()
    {
        var cmap = Table("cmap");
        var count = U16(cmap, 2);
        for (var i = 0; i < count; i++)
        {
            var subtable = cmap[(int)BinaryPrimitives.ReadUInt32BigEndian(cmap[(8 + (8 * i))..])..];
            if (U16(subtable, 0) != 4) continue;
            ReadSegments(subtable);
            return;
        }

        throw new InvalidOperationException("The font has no 16-bit character map.");
    }

    private void ReadSegments(ReadOnlySpan<byte> map)
    {
        var size = U16(map, 6);
        var (ends, starts, deltas, offsets) = (14, 16 + size, 16 + (2 * size), 16 + (3 * size));
        for (var segment = 0; segment < size; segment += 2)
        {
            var delta = U16(map, deltas + segment);
            var offset = U16(map, offsets + segment);
            for (int c = U16(map, starts + segment); c <= U16(map, ends + segment) && c < char.MaxValue; c++)
            {
                var glyph = offset == 0
                    ? c
                    : U16(map, offsets + segment + offset + (2 * (c - U16(map, starts + segment))));
                _glyphOf[c] = offset != 0 && glyph == 0 ? (ushort)0 : (ushort)(glyph + delta);
            }
        }
    }
}
