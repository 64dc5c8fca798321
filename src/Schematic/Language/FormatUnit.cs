namespace Schematic.Language;

/// <summary>What the formatter moves as one: a word, a string, a quantity with its unit, a brace or a semicolon.</summary>
/// <param name="Text">Its characters.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Gap">Blanks before it when it is not put in a column: 1, or 2 where the user left more.</param>
internal readonly record struct FormatUnit(string Text, FormatUnitKind Kind, int Gap);
