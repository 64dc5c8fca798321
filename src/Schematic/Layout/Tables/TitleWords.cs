using Schematic.Fonts;

namespace Schematic.Layout.Tables;

/// <summary>Titles of sheets that fit into the title block and the index in lettering of 2.5 mm, so that neither has to shorten them.</summary>
internal static class TitleWords
{
    /// <summary>What the title block and the index have room for, in millimetres.</summary>
    public const double WidthMm = 75;

    private const double LetterHeight = 2.5;
    private const string More = " …";

    /// <summary>
    /// A drawing's title and the lists that stand in its free space. Where both are too long the drawing is named by fewer of its
    /// things, for a list is looked for by its name; then the last lists are left to their headings.
    /// </summary>
    public static string Joined(string drawing, IEnumerable<string> lists)
    {
        var names = lists.ToList();
        var colon = drawing.IndexOf(": ", StringComparison.Ordinal);
        var (head, things) = colon < 0 ? (drawing, []) : (drawing[..(colon + 2)], drawing[(colon + 2)..].Replace(More, "", StringComparison.Ordinal).Split(", ").ToList());
        var isCut = drawing.Contains(More, StringComparison.Ordinal);
        string Title() => string.Join(", ", names.Prepend(head + string.Join(", ", things) + (isCut ? More : "")));
        while (!Fits(Title()) && things.Count > 1)
        {
            things.RemoveAt(things.Count - 1);
            isCut = true;
        }

        return Fits(Title()) ? Title() : Listed([head + string.Join(", ", things) + (isCut ? More : ""), .. names]);
    }

    /// <summary>The names of lists, as many as fit.</summary>
    public static string Listed(IReadOnlyList<string> names)
    {
        for (var count = names.Count; count > 1; count--)
        {
            var title = Cut(string.Join(", ", names.Take(count)), count < names.Count);
            if (Fits(title)) return title;
        }

        return Cut(names[0], names.Count > 1);
    }

    /// <summary>A title of which something is left out; the sign stands once, however often something was.</summary>
    private static string Cut(string title, bool isCut) => isCut && !title.EndsWith(More, StringComparison.Ordinal) ? title + More : title;

    private static bool Fits(string title) => Lettering.WidthMm(title, LetterHeight) <= WidthMm;
}
