using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Colours as words and as IEC 60757 letters.</summary>
internal static class Colours
{
    private static readonly ImmutableDictionary<string, ColourCode> ByName = new Dictionary<string, ColourCode>
    {
        ["black"] = ColourCode.BK,
        ["brown"] = ColourCode.BN,
        ["red"] = ColourCode.RD,
        ["orange"] = ColourCode.OG,
        ["yellow"] = ColourCode.YE,
        ["green"] = ColourCode.GN,
        ["blue"] = ColourCode.BU,
        ["violet"] = ColourCode.VT,
        ["grey"] = ColourCode.GY,
        ["gray"] = ColourCode.GY,
        ["white"] = ColourCode.WH,
        ["pink"] = ColourCode.PK,
        ["gold"] = ColourCode.GD,
        ["turquoise"] = ColourCode.TQ,
        ["silver"] = ColourCode.SR,
        ["green-yellow"] = ColourCode.GNYE,
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <summary>
    /// The ten colours in the order of the table of IEC 60757, which is that of the digits 0 to 9 on resistors (IEC 60062, from
    /// memory).
    /// </summary>
    public static ImmutableArray<ColourCode> TableOrder { get; } =
    [
        ColourCode.BK, ColourCode.BN, ColourCode.RD, ColourCode.OG, ColourCode.YE, ColourCode.GN, ColourCode.BU, ColourCode.VT, ColourCode.GY, ColourCode.WH,
    ];

    /// <summary>Colour words, to propose the nearest.</summary>
    public static IReadOnlyCollection<string> Names { get; } = [.. ByName.Keys.Order(StringComparer.Ordinal)];

    private static readonly ImmutableDictionary<string, string> OtherNames = new Dictionary<string, string>
    {
        ["amber"] = "yellow", // IEC 60073 has one colour of indicator lamps for both (from memory)
        ["purple"] = "violet",
        ["lilac"] = "violet",
        ["mauve"] = "violet",
        ["cyan"] = "turquoise",
        ["rose"] = "pink",
        ["slate"] = "grey",
    }.ToImmutableDictionary(StringComparer.Ordinal);

    /// <summary>The word of the language for a colour that has another name at the bench, <c>slate</c>; null when none is known.</summary>
    public static string? UsualNameOf(string word) => OtherNames.GetValueOrDefault(word.ToLowerInvariant());

    /// <summary>
    /// The colour of a word such as <c>black</c>, <c>white/blue</c>, <c>BK</c> or <c>WHBU</c>; null when it is none. The order
    /// tells the body from the tracer. <c>green-yellow</c> and <c>GNYE</c> are the protective earth's colour (IEC 60757:2021
    /// clause 5); a green body with a yellow tracer is another wire that looks like it.
    /// </summary>
    public static WireColour? Find(string word)
    {
        var slash = word.IndexOf('/');
        if (slash >= 0) return Pair(One(word[..slash]), One(word[(slash + 1)..]));
        if (One(word) is { } single) return new WireColour(single);
        return word.Length == 4 ? Pair(One(word[..2]), One(word[2..])) : null;
    }

    private static ColourCode? One(string word) =>
        ByName.TryGetValue(word, out var named) ? named
        : word is { Length: 2 or 4 } && Enum.TryParse<ColourCode>(word, ignoreCase: false, out var code) && Enum.IsDefined(code)
            && char.IsAsciiLetterUpper(word[0]) ? code
        : null;

    private static WireColour? Pair(ColourCode? main, ColourCode? tracer) => (main, tracer) switch
    {
        (null, _) or (_, null) => null,
        (ColourCode.GNYE, _) or (_, ColourCode.GNYE) => null,
        var (m, t) when m == t => new WireColour(m!.Value),
        var (m, t) => new WireColour(m!.Value, t),
    };
}
