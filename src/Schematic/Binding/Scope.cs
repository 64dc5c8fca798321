using Schematic.Text;

namespace Schematic.Binding;

/// <summary>One use of one file: names in it mean what the same file declares, under the prefix that the use gives.</summary>
internal sealed record Scope(SourceText Source, string Prefix)
{
    /// <summary>The name as the whole panel knows it.</summary>
    public string Full(string name) => Prefix.Length == 0 ? name : Prefix + name;

    /// <summary>A span of this file.</summary>
    public SourceSpan At(TextSpan span) => new(Source, span);
}
