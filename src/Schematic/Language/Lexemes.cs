using System.Globalization;
using System.Text;
using Schematic.Text;
using Sprache;

namespace Schematic.Language;

/// <summary>
/// The words of the language as parsers. Each skips the blanks before it and after it, so that a statement's parser speaks of
/// words alone. They scan the text themselves and jump: a parser per character would cost an object per character.
/// </summary>
internal static class Lexemes
{
    /// <summary>A name without a prefix, to declare something.</summary>
    public static readonly Parser<WordSyntax> SimpleName = Word("a name", Characters.ScanSimpleName);

    /// <summary>A name, with the prefix of a used file where it is in one.</summary>
    public static readonly Parser<WordSyntax> Name = Word("a name", Characters.ScanName);

    /// <summary>A contact name, a position, a net's name, a wire's designator.</summary>
    public static readonly Parser<WordSyntax> Contact = Word("a name", Characters.ScanContact);

    /// <summary>A colour.</summary>
    public static readonly Parser<WordSyntax> Colour = Word("a colour", Characters.ScanColour);

    /// <summary>A string.</summary>
    public static readonly Parser<WordSyntax> String = input => Scan(
        input, "a string in quotes", Characters.ScanString, (text, span) => new WordSyntax(HiddenCharacters.Show(Unescape(text)), span));

    /// <summary>A string that is taken as it is written: the path of a file.</summary>
    public static readonly Parser<WordSyntax> Path = input => Scan(
        input, "a string in quotes", Characters.ScanString, (text, span) => new WordSyntax(Unescape(text), span));

    /// <summary>A string, or a run of characters without a blank.</summary>
    public static readonly Parser<WordSyntax> StringOrBare = input => Scan(
        input, "a word or a string in quotes", text => Math.Max(Characters.ScanString(text), Characters.ScanBare(text)),
        (text, span) => new WordSyntax(HiddenCharacters.Show(text[0] == '"' ? Unescape(text) : text), span));

    /// <summary>A number without a unit.</summary>
    public static readonly Parser<NumberSyntax> Number = input => Scan(
        input, "a number", Characters.ScanNumber, (text, span) => new NumberSyntax(text, ToDouble(text), span));

    /// <summary>The keyword <paramref name="word"/>.</summary>
    public static Parser<WordSyntax> Keyword(string word) => OneOf(word);

    /// <summary>One of several keywords.</summary>
    public static Parser<WordSyntax> OneOf(params string[] words)
    {
        var expected = words.Select(w => $"`{w}`").ToArray();
        return input =>
        {
            var slice = Trim(input);
            var length = Characters.ScanContact(slice.Rest);
            foreach (var word in words)
            {
                if (!slice.Rest[..length].SequenceEqual(word)) continue;
                var span = new TextSpan(slice.Position, length);
                return Result.Success(new WordSyntax(word, span), Trim(slice.At(span.End)));
            }

            return Result.Failure<WordSyntax>(slice, "", expected);
        };
    }

    /// <summary>Adds the empty result: the parser may fail without having an effect.</summary>
    public static Parser<T?> Maybe<T>(this Parser<T> parser) where T : class => input =>
    {
        var result = parser(input);
        return result.WasSuccessful
            ? Result.Success<T?>(result.Value, result.Remainder)
            : Result.Success<T?>(null, input);
    };

    /// <summary>Moves past blanks.</summary>
    public static SliceInput Trim(IInput input)
    {
        var slice = (SliceInput)input;
        return slice.At(Characters.SkipBlanks(slice.Source, slice.Position, slice.End));
    }

    /// <summary>The characters of a number as a value; what no double can hold becomes infinite and is out of every range.</summary>
    public static double ToDouble(ReadOnlySpan<char> number) =>
        double.Parse(number, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    private static Parser<WordSyntax> Word(string expected, Scanner scan) =>
        input => Scan(input, expected, scan, (text, span) => new WordSyntax(HiddenCharacters.Show(text), span));

    private static IResult<T> Scan<T>(IInput input, string expected, Scanner scan, Func<string, TextSpan, T> make)
    {
        var slice = Trim(input);
        var length = scan(slice.Rest);
        if (length == 0) return Result.Failure<T>(slice, "", [expected]);
        var span = new TextSpan(slice.Position, length);
        return Result.Success(make(slice.Taken(length), span), Trim(slice.At(span.End)));
    }

    /// <summary>A mark of the language.</summary>
    public static Parser<string> Sign(string sign)
    {
        string[] expected = [$"`{sign}`"];
        return input =>
        {
            var slice = Trim(input);
            return slice.Rest.StartsWith(sign, StringComparison.Ordinal)
                ? Result.Success(sign, Trim(slice.At(slice.Position + sign.Length)))
                : Result.Failure<string>(slice, "", expected);
        };
    }

    private static string Unescape(string quoted)
    {
        var end = quoted.Length > 1 && quoted[^1] == '"' ? quoted.Length - 1 : quoted.Length;
        if (!quoted.Contains('\\')) return quoted[1..end];
        var text = new StringBuilder(quoted.Length);
        for (var i = 1; i < end; i++)
        {
            if (quoted[i] == '\\' && i + 1 < end) i++;
            text.Append(quoted[i]);
        }

        return text.ToString();
    }

    /// <summary>How many characters at the start of a text belong to a word; 0 when it does not begin with one.</summary>
    internal delegate int Scanner(ReadOnlySpan<char> text);
}
