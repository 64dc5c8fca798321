namespace Schematic.Analysis.Quantities;

/// <summary>Ohm's law along a wire. Any unit of length will do as long as both arguments share it.</summary>
public static class VoltageDrop
{
    /// <summary>Volts lost: ohms per length x length x amperes.</summary>
    public static double Volts(double ohmsPerLength, double length, double amps) => ohmsPerLength * length * amps;

    /// <summary>The longest run that keeps the drop: volts / (ohms per length x amperes); no end without current.</summary>
    public static double MaxLength(double ohmsPerLength, double allowedVolts, double amps) =>
        amps <= 0 ? double.PositiveInfinity : allowedVolts / (ohmsPerLength * amps);
}
