namespace Schematic.Drawing;

/// <summary>
/// What a text refers to: a thing that is drawn somewhere in the pack. Its sheet and zone are written into the text when every
/// sheet has its number; until then the text holds the widest place, so that a layout measures what it must keep free.
/// </summary>
/// <param name="Target">The thing.</param>
public sealed record PlaceReference(Thing Target)
{
    /// <summary>As wide as a place gets on a pack of usual size.</summary>
    public const string Widest = "99/H12";

    /// <summary>What stands before the place, blank included.</summary>
    public string Before { get; init; } = "";

    /// <summary>What stands behind the place.</summary>
    public string After { get; init; } = "";

    /// <summary>The kind of sheet that is meant; null: the kind that the reference stands on, or else the first that shows the thing.</summary>
    public SheetKind? On { get; init; }

    /// <summary>The text while the place is open.</summary>
    public string WidestText => Before + Widest + After;

    /// <summary>The text for a place such as <c>3/B2</c>; one that is drawn nowhere leaves its blank away.</summary>
    public string TextFor(string place) => place.Length == 0 ? (Before.TrimEnd() + After).Trim() : Before + place + After;
}
