namespace Schematic.Language;

/// <summary>What the formatter needs to know of a word.</summary>
internal enum FormatUnitKind
{
    Word,
    Number,
    Quantity,
    Terminal,
    Text,
    Open,
    Close,
    Separator,
}
