namespace Schematic.Inserts;

/// <summary>
/// Where one contact sits, in the canonical view: the front (mating) face of the pin insert, key up, x to the right and
/// y up, origin at the insert's centre.
/// </summary>
/// <param name="Name">The contact's number or letter. Case matters: <c>a</c> and <c>A</c> are two contacts.</param>
/// <param name="XMm">Millimetres to the right.</param>
/// <param name="YMm">Millimetres up.</param>
public sealed record ContactPosition(string Name, double XMm, double YMm);
