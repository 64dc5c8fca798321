using Schematic.Text;

namespace Schematic.Model;

/// <summary>One input of a board.</summary>
/// <param name="Terminal">Terminal name on the board.</param>
/// <param name="MaxVolts">Highest voltage it stands against the board's ground, or null when unknown.</param>
/// <param name="Span">Where it is declared.</param>
public sealed record BoardInput(string Terminal, double? MaxVolts, SourceSpan Span)
{
    /// <summary>Voltage that the pull-up resistor goes to, or null where there is none.</summary>
    public double? PullUpVolts { get; init; }

    /// <summary>The pull-up's resistance in ohms.</summary>
    public double PullUpOhms { get; init; }

    /// <summary>The resistance of a pull-down to ground in ohms, or null where there is none.</summary>
    public double? PullDownOhms { get; init; }

    /// <summary>At or below this many volts the input reads low; a third of the pull-up voltage unless stated.</summary>
    public double? LowVolts { get; init; }

    /// <summary>At or above this many volts the input reads high; two thirds of the pull-up voltage unless stated.</summary>
    public double? HighVolts { get; init; }

    /// <summary>What the software calls it, or empty.</summary>
    public string Meaning { get; init; } = "";
}
