namespace Schematic.Text;

/// <summary>A span together with the file it lies in: what every fact of a panel keeps, to be shown to the user.</summary>
public readonly record struct SourceSpan(SourceText Source, TextSpan Span)
{
    private static readonly SourceText Nowhere = new("", "");

    /// <summary>A span for facts that no file states, such as designs made by a program.</summary>
    public static SourceSpan None => new(Nowhere, default);

    /// <summary>Line and column of the first character, both from one.</summary>
    public LinePosition Start => Source.PositionOf(Span.Start);

    /// <inheritdoc/>
    public override string ToString() => $"{Source.FileName}:{Start.Line}:{Start.Column}";
}
