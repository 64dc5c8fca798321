using System.Reflection;

namespace Schematic.Language;

/// <summary>The whole language on one page, embedded from <c>Language/README.md</c>, so that a tool that was installed has it.</summary>
public static class LanguageReference
{
    /// <summary>The page, in Markdown.</summary>
    public static string Text
    {
        get
        {
            using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("Schematic.LanguageReference.md")!;
            using var reader = new StreamReader(stream);
            return reader.ReadToEnd().ReplaceLineEndings("\n");
        }
    }
}
