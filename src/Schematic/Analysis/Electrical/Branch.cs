namespace Schematic.Analysis.Electrical;

/// <summary>One branch of a network: current from one node to the other is (volts between them - Volts) / Ohms.</summary>
/// <param name="Kind">How it behaves.</param>
/// <param name="From">The node where current enters when it is counted positive.</param>
/// <param name="To">The other node.</param>
/// <param name="Ohms">Resistance, above zero.</param>
/// <param name="Volts">Voltage in series: a source's setting, a diode's knee, else zero.</param>
public readonly record struct Branch(BranchKind Kind, int From, int To, double Ohms, double Volts = 0)
{
    /// <summary>The most that a source gives, in amperes.</summary>
    public double LimitAmps { get; init; } = double.PositiveInfinity;
}
