namespace Schematic.Inserts;

/// <summary>
/// Where one contact sits, in the canonical view: the front (mating) face of the pin insert, key up, x to the right and
/// y up, origin at the insert's centre.
/// </summary>
/// <param name="Name">The contact's number or letter. Case matters: <c>a</c> and <c>A</c> are two contacts.</param>
/// <param name="XMm">Millimetres to the right.</param>
/// <param name="YMm">Millimetres up.</param>
public sealed record ContactPosition(string Name, double XMm, double YMm)
{
    /// <summary>Diameter of this contact in millimetres where it differs from the arrangement's, else null.</summary>
    public double? DiameterMm { get; init; }

    /// <summary>How far the centres of two contacts lie apart, in millimetres.</summary>
    public double DistanceTo(ContactPosition other) => Math.Sqrt(
        ((XMm - other.XMm) * (XMm - other.XMm)) + ((YMm - other.YMm) * (YMm - other.YMm)));
}
