namespace Schematic.Model;

/// <summary>Which figure of a device the program reckoned from others that the file states; printed behind an equals sign.</summary>
[Flags]
public enum Reckoned
{
    /// <summary>None: they are as stated, or unknown.</summary>
    None = 0,

    /// <summary>The volts, from amperes and ohms.</summary>
    Volts = 1,

    /// <summary>The amperes, from volts and ohms or from volts and watts.</summary>
    Amps = 2,
}
