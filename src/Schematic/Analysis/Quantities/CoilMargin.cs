namespace Schematic.Analysis.Quantities;

/// <summary>
/// Whether a coil pulls in on the voltage it gets. The operate voltage of a data sheet is that of a cold coil (20 °C); a
/// warm winding has more resistance and needs more volts for the same current (<see cref="Sources.CopperTemperature"/>).
/// </summary>
/// <param name="Volts">Voltage at the coil.</param>
/// <param name="OperateVolts">Lowest voltage at which it surely operates, cold.</param>
/// <param name="CoilCelsius">The winding's temperature when it has to pull in.</param>
public sealed record CoilMargin(double Volts, double OperateVolts, double CoilCelsius)
{
    /// <summary>How much a continuously energised coil warms above its surroundings: +60 °C, the case of the source read.</summary>
    public const double UsualRise = 60;

    /// <summary>Volts over the cold operate voltage; negative when it does not pull in at all.</summary>
    public double ColdVolts => Volts - OperateVolts;

    /// <summary>The operate voltage of the warm winding.</summary>
    public double HotOperateVolts => OperateVolts * CopperWire.TemperatureFactor(CoilCelsius);

    /// <summary>Volts over the warm operate voltage.</summary>
    public double HotVolts => Volts - HotOperateVolts;

    /// <summary>Pulling force as a share of that at another voltage: the square of the share of the current (below saturation).</summary>
    public static double ForceShare(double voltShare, double resistanceShare = 1) => Math.Pow(voltShare / resistanceShare, 2);
}
