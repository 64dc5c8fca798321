using System.Globalization;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// The wires that a contact size takes, thinnest and thickest in AWG. Defaults only: the part number of the contact decides.
/// </summary>
/// <param name="ThinnestAwg">The thinnest wire: the higher number.</param>
/// <param name="ThickestAwg">The thickest wire: the lower number.</param>
public sealed record WireRange(int ThinnestAwg, int ThickestAwg)
{
    // A metric size that is within two parts in a hundred of an AWG size is taken as that size.
    private const double Tolerance = 0.02;

    /// <summary>The range in words.</summary>
    public string Text => ThinnestAwg == ThickestAwg
        ? $"{ThinnestAwg.ToString(CultureInfo.InvariantCulture)} AWG"
        : string.Create(CultureInfo.InvariantCulture, $"{ThinnestAwg} to {ThickestAwg} AWG");

    /// <summary>
    /// The range of a contact size, or null when none is known. Crimp: ranges of AS39029 contacts, read second-hand from a
    /// maker's catalogue. Solder cups of size 16 take 22 to 16 by a distributor's page.
    /// </summary>
    public static WireRange? Of(string size, Termination termination) => size.ToUpperInvariant() switch
    {
        "22D" or "22" => new WireRange(28, 22),
        "20" => new WireRange(24, 20),
        "16" => new WireRange(termination == Termination.Solder ? 22 : 20, 16),
        "12" => new WireRange(14, 12),
        "10" => new WireRange(10, 10),
        _ => null,
    };

    /// <summary>Whether the wire is thicker than the contact takes.</summary>
    public bool IsTooThick(WireGauge gauge) => gauge.AreaMm2 > WireGauge.FromAwg(ThickestAwg).AreaMm2 * (1 + Tolerance);

    /// <summary>Whether the wire is thinner than the contact holds.</summary>
    public bool IsTooThin(WireGauge gauge) => gauge.AreaMm2 < WireGauge.FromAwg(ThinnestAwg).AreaMm2 * (1 - Tolerance);
}
