namespace Schematic.Language;

/// <summary>
/// Keeps short words of a file once each: a long list of wires says the same keywords, colours, units and parts on every line. It is
/// for one reading of one file; when it is full, further words stand by themselves.
/// </summary>
internal sealed class WordPool
{
    private const int MostWords = 4096;
    private const int LongestWord = 12;

    private readonly HashSet<string> _words = new(StringComparer.Ordinal);
    private readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> _byCharacters;

    public WordPool() => _byCharacters = _words.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>The characters as a text.</summary>
    public string Of(ReadOnlySpan<char> characters)
    {
        if (characters.Length > LongestWord) return characters.ToString();
        if (_byCharacters.TryGetValue(characters, out var known)) return known;
        var word = characters.ToString();
        if (_words.Count < MostWords) _words.Add(word);
        return word;
    }
}
