using System.Collections.Immutable;
using System.Reflection;
using Schematic.Language;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>
/// The contact arrangements that come with the program, embedded from <c>examples/inserts</c>: a connector names one by
/// <c>insert d-subminiature-25</c>. One is read when it is asked for.
/// </summary>
public static class InsertLibrary
{
    private const string Prefix = "Schematic.InsertLibrary.";
    private const string Suffix = ".panel";

    /// <summary>What of an arrangement's file belongs to the one connector it describes, not to every connector that names it.</summary>
    private static readonly string[] OwnToTheFile = ["pins", "sockets", "solder", "crimp", "screw", "clamp", "key", "price", "spares", "on-hand"];

    /// <summary>The names of all arrangements, in ordinal order.</summary>
    public static ImmutableArray<string> Names { get; } =
    [
        .. Assembly.GetExecutingAssembly().GetManifestResourceNames()
            .Where(n => n.StartsWith(Prefix, StringComparison.Ordinal) && n.EndsWith(Suffix, StringComparison.Ordinal))
            .Select(n => n[Prefix.Length..^Suffix.Length])
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>The panel file of an arrangement, or null when there is none of that name.</summary>
    public static string? TextOf(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Prefix + name + Suffix);
        if (stream is null) return null;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    /// <summary>
    /// The clauses that describe an arrangement, at the place <paramref name="span"/> where it is named; null when there is none
    /// of that name.
    /// </summary>
    internal static ImmutableArray<ClauseSyntax>? ClausesOf(string name, TextSpan span)
    {
        if (TextOf(name) is not { } text) return null;
        var connector = PanelParser.Parse(new SourceText(name + Suffix, text)).Statements.OfType<PartSyntax>().First();
        return
        [
            .. connector.Block.Where(c => !OwnToTheFile.Contains(c.Keyword)).Select(c => c with
            {
                Span = span,
                Values = [.. c.Values.Select(v => v with { Span = span })],
            }),
        ];
    }
}
