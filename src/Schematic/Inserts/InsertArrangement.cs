using System.Collections.Immutable;

namespace Schematic.Inserts;

/// <summary>
/// The contacts of a connector insert in their own order, each with its place in the canonical view (front of pins).
/// </summary>
/// <param name="Family">The family in a word: spiral, ring, rows, grid, strip, positions.</param>
/// <param name="Outline">The shape drawn around the contacts.</param>
/// <param name="Contacts">The contacts in the order of numbering: the guide line follows it.</param>
/// <param name="Convention">
/// The numbering convention in words, printed beside every face, such as
/// "1 at the centre, clockwise outward, on the front of the pins".
/// </param>
public sealed record InsertArrangement(
    string Family, InsertOutline Outline, ImmutableArray<ContactPosition> Contacts, string Convention)
{
    /// <summary>Whether the guide line through the contacts in their order is drawn: spirals and rings.</summary>
    public bool HasGuideLine { get; init; }

    /// <summary>Diameter of a contact hole on the face, in millimetres, for the drawing.</summary>
    public double ContactDiameterMm { get; init; } = 1.6;

    /// <summary>The diameter that <paramref name="contact"/> is drawn with, in millimetres.</summary>
    public double DiameterOf(ContactPosition contact) => contact.DiameterMm ?? ContactDiameterMm;

    /// <summary>What the file does not state about it and the program chose; contacts placed by hand leave nothing to choose.</summary>
    public ImmutableArray<InsertAssumption> Assumed { get; init; } = [];

    /// <summary>Where the positions were taken from, or null for the user's own.</summary>
    public string? Source { get; init; }
}
