namespace Schematic.Model;

/// <summary>What the title block says (fields after ISO 7200).</summary>
public sealed record TitleData
{
    /// <summary>Title of the drawing.</summary>
    public string Title { get; init; } = "";

    /// <summary>Identification (drawing) number.</summary>
    public string Number { get; init; } = "";

    /// <summary>Revision index.</summary>
    public string Revision { get; init; } = "";

    /// <summary>Date of issue, as the user wrote it; never taken from a clock.</summary>
    public string Date { get; init; } = "";

    /// <summary>Legal owner.</summary>
    public string Owner { get; init; } = "";

    /// <summary>Who drew it.</summary>
    public string DrawnBy { get; init; } = "";

    /// <summary>Who approved it.</summary>
    public string ApprovedBy { get; init; } = "";
}
