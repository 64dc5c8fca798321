namespace Schematic.Diagnostics;

/// <summary>How a text report is coloured: escape sequences put before each kind of text. The letters are the same in every theme.</summary>
public sealed record TextTheme
{
    /// <summary>No colour: for files, pipes and terminals without.</summary>
    public static TextTheme Plain { get; } = new();

    /// <summary>Colours of a terminal, by the eight basic codes of ECMA-48.</summary>
    public static TextTheme Colour { get; } = new()
    {
        Error = "\u001b[1;31m",
        Warning = "\u001b[1;33m",
        Note = "\u001b[1;36m",
        Message = "\u001b[1m",
        Quiet = "\u001b[2m",
        Help = "\u001b[32m",
        Reset = "\u001b[0m",
    };

    /// <summary>Before the word error and the mark under its span.</summary>
    public string Error { get; init; } = "";

    /// <summary>Before the word warning and its mark.</summary>
    public string Warning { get; init; } = "";

    /// <summary>Before the word note and its mark.</summary>
    public string Note { get; init; } = "";

    /// <summary>Before the sentence that says what was found.</summary>
    public string Message { get; init; } = "";

    /// <summary>Before line numbers, rules and other places.</summary>
    public string Quiet { get; init; } = "";

    /// <summary>Before the sentence that says what to do.</summary>
    public string Help { get; init; } = "";

    /// <summary>Ends a coloured text.</summary>
    public string Reset { get; init; } = "";

    /// <summary>The colour of a severity.</summary>
    public string Of(Severity severity) => severity switch
    {
        Severity.Error => Error,
        Severity.Warning => Warning,
        _ => Note,
    };
}
