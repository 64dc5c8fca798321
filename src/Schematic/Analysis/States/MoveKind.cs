namespace Schematic.Analysis.States;

/// <summary>How a move is done.</summary>
public enum MoveKind
{
    /// <summary>To a position where the actuator stays.</summary>
    Move,

    /// <summary>To a position where it must be held.</summary>
    Hold,

    /// <summary>Let go, so that it springs back.</summary>
    LetGo,

    /// <summary>A supply is switched.</summary>
    Switch,

    /// <summary>Nothing is touched until the delay of a relay is over.</summary>
    Wait,

    /// <summary>A part that varies comes to another value.</summary>
    Vary,
}
