using Schematic.Analysis.States;

namespace Schematic.Analysis.Positions;

/// <summary>What is looked for among all states and moments.</summary>
/// <param name="Lasting">What is to hold in a state that lasts.</param>
internal readonly record struct Question(Diagram Lasting)
{
    /// <summary>What is to hold for a moment while an actuator moves; never where moments are not asked about.</summary>
    public Diagram InPassing { get; init; }

    /// <summary>What is to hold in the positions before and after such a moment.</summary>
    public Diagram Asked { get; init; } = Diagram.Always;

    /// <summary>Whether moments count in which contacts open that break before they make.</summary>
    public bool OpensToo { get; init; }

    /// <summary>Whether nothing can fulfil it.</summary>
    public bool IsEmpty => Lasting.IsNever && InPassing.IsNever;
}
