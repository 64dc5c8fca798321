using System.Security.Cryptography;
using System.Text;

namespace Schematic.Cli.Watch;

/// <summary>The page as long as there is no drawing: it shows the findings, and loads itself anew when there is one.</summary>
internal static class EmptyPage
{
    /// <summary>The document; nothing runs in it but the script of the preview.</summary>
    public static string Text { get; } = Write(PreviewScript.For(0));

    private static string Write(string script)
    {
        var hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)));
        return $"""
            <!DOCTYPE html>
            <html lang="en"><head><meta charset="utf-8">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'sha256-{hash}'; connect-src 'self'; base-uri 'none'; form-action 'none'">
            <meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark">
            <title>No drawing yet</title></head>
            <body><div id="preview"></div><main id="content"><p>There is no drawing yet.</p></main><script>{script}</script></body></html>

            """;
    }
}
