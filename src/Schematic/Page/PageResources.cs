using System.Reflection;
using System.Security.Cryptography;
using System.Text;

namespace Schematic.Page;

/// <summary>The page's own style and script, as they stand beside this file.</summary>
internal static class PageResources
{
    /// <summary>The files of the script in the order in which they are read.</summary>
    private static readonly string[] ScriptFiles =
    [
        "follow.js", "move.js", "things.js", "dom.js", "drawing.js", "choose.js", "operate.js", "search.js", "views.js", "ringout.js", "page.js",
    ];

    /// <summary>The style.</summary>
    public static string Style => Read("page.css");

    /// <summary>The whole script.</summary>
    public static string Script => "'use strict';\n{\n" + string.Concat(ScriptFiles.Select(Read)) + "}\n";

    /// <summary>What a content security policy calls a script or a style that stands in the page.</summary>
    public static string HashOf(string text) => $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}'";

    /// <summary>Line ends are those of HTML whatever the checkout made of them: the hash is taken of what a browser reads.</summary>
    private static string Read(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"Schematic.Page.{name}")
            ?? throw new InvalidOperationException($"{name} is missing from the assembly.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().Replace("\r\n", "\n", StringComparison.Ordinal);
    }
}
