using Schematic.Text;

namespace Schematic.Editor;

/// <summary>What kind of word is proposed.</summary>
public enum ProposalKind
{
    /// <summary>A word of the language.</summary>
    Keyword,

    /// <summary>A part, an actuator or another name of the file.</summary>
    Name,

    /// <summary>A contact.</summary>
    Contact,

    /// <summary>A position of an actuator, or a state of a load or a supply.</summary>
    State,

    /// <summary>A unit.</summary>
    Unit,

    /// <summary>A colour.</summary>
    Colour,

    /// <summary>A file.</summary>
    File,
}

/// <summary>A word that may be written at a place.</summary>
/// <param name="Word">The word.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Detail">What is said beside it; may be empty.</param>
/// <param name="Replaces">What of the text gives way to it.</param>
public sealed record Proposal(string Word, ProposalKind Kind, string Detail, TextSpan Replaces)
{
    /// <summary>How near it stands to the head of the list; lower is nearer.</summary>
    public int Rank { get; init; }
}
