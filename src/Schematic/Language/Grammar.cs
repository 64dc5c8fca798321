using System.Collections.Frozen;

namespace Schematic.Language;

/// <summary>
/// The grammar: for each keyword the form of its statement. The statements of a kind stand together in a class of their own;
/// the words they are made of in <see cref="Lexemes"/>.
/// </summary>
internal static class Grammar
{
    /// <summary>The form of each statement by its keyword.</summary>
    public static readonly FrozenDictionary<string, StatementForm> Forms = new[]
    {
        SettingGrammar.Forms(), PartGrammar.Forms(), SwitchGrammar.Forms(), WiringGrammar.Forms(), ProofGrammar.Forms(),
        ArrangingGrammar.Forms(),
    }.SelectMany(f => f).ToFrozenDictionary(StringComparer.Ordinal);
}
