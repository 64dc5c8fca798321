namespace Schematic.Cli.Files;

/// <summary>What came of reading or writing a file: a value, or a sentence that says why not.</summary>
/// <param name="Value">What was read; null when it failed.</param>
/// <param name="Problem">One sentence; null when it succeeded.</param>
public sealed record FileResult<T>(T? Value, string? Problem)
    where T : class;
