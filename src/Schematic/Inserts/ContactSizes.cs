namespace Schematic.Inserts;

/// <summary>Contact sizes in the trade's numbers and the diameter of their pins.</summary>
public static class ContactSizes
{
    /// <summary>
    /// Pin diameter at the mating end in millimetres, or null for a size not known here. Size 20: 0.040 inch, MIL-STD-1560C
    /// in a transcription; all others from memory. The contact's own part number decides.
    /// </summary>
    public static double? PinDiameterMm(string size) => size switch
    {
        "22D" or "22" => 0.76,
        "20" => 1.02,
        "16" => 1.59,
        "12" => 2.39,
        "10" => 3.18,
        "8" => 3.61,
        _ => null,
    };
}
