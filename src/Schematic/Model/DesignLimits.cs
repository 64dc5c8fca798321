namespace Schematic.Model;

/// <summary>What the wires are sized for. Every figure here is the user's or a stated habit, never silently assumed.</summary>
public sealed record DesignLimits
{
    /// <summary>Allowed drop in volts over a run and its return, or null to use <see cref="DropPercent"/>.</summary>
    public double? DropVolts { get; init; }

    /// <summary>Allowed drop in percent of the supply's voltage, or null for the default table.</summary>
    public double? DropPercent { get; init; }

    /// <summary>Temperature around the harness in degrees Celsius.</summary>
    public double AmbientCelsius { get; init; } = 30;

    /// <summary>Temperature that the wire's insulation stands, in degrees Celsius.</summary>
    public double InsulationCelsius { get; init; } = 105;

    /// <summary>How many loaded wires lie together, or null to count the wires of the harness.</summary>
    public int? BundledWires { get; init; }
}
