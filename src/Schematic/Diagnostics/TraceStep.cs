using System.Collections.Immutable;

namespace Schematic.Diagnostics;

/// <summary>One step of what leads to a finding, for a finger on the drawing: data that printers put into words.</summary>
public abstract record TraceStep
{
    /// <summary>What it is, as printers label it: <c>move</c>, <c>path</c>, <c>state</c> or <c>fact</c>.</summary>
    public abstract string Label { get; }

    /// <summary>The step in words.</summary>
    public abstract override string ToString();

    /// <summary>Hands itself to a visitor as the kind of step that it is.</summary>
    public abstract void Accept(ITraceVisitor visitor);
}

/// <summary>What is done with every kind of step; a new kind does not compile until each printer has said it.</summary>
public interface ITraceVisitor
{
    /// <summary>A move.</summary>
    void Visit(MoveStep move);

    /// <summary>A path.</summary>
    void Visit(PathStep path);

    /// <summary>A state.</summary>
    void Visit(StateStep state);

    /// <summary>A fact.</summary>
    void Visit(FactStep fact);
}

/// <summary>Something that a hand does.</summary>
/// <param name="Action">What is done.</param>
/// <param name="Actuator">The actuator or the supply that it is done to, or the relay that is waited for.</param>
/// <param name="Position">Where it then stands; of a supply <c>on</c> or <c>off</c>.</param>
public sealed record MoveStep(MoveAction Action, string Actuator, string Position) : TraceStep
{
    /// <inheritdoc/>
    public override string Label => "move";

    /// <inheritdoc/>
    public override void Accept(ITraceVisitor visitor) => visitor.Visit(this);

    /// <inheritdoc/>
    public override string ToString() => Action switch
    {
        MoveAction.Hold => $"hold {Actuator} at {Position}",
        MoveAction.LetGo => $"let {Actuator} go: it springs to {Position}",
        MoveAction.PushAndTurn => $"push {Actuator} and turn it to {Position}",
        MoveAction.Switch => $"switch {Actuator} {Position}",
        MoveAction.Wait => $"wait until {Actuator} is {Position}",
        MoveAction.Vary => $"{Actuator} comes to stand {Position}",
        _ => $"move {Actuator} to {Position}",
    };
}

/// <summary>What a hand does.</summary>
public enum MoveAction
{
    /// <summary>Moves an actuator to where it stays.</summary>
    Move,

    /// <summary>Moves an actuator to a position that it springs back from, and holds it there.</summary>
    Hold,

    /// <summary>Lets an actuator go, so that it springs back.</summary>
    LetGo,

    /// <summary>Switches a supply on or off.</summary>
    Switch,

    /// <summary>Pushes an actuator and turns it while it is pushed.</summary>
    PushAndTurn,

    /// <summary>Waits until the delay of a relay is over.</summary>
    Wait,

    /// <summary>Something that varies comes to another value.</summary>
    Vary,
}

/// <summary>A way from terminal to terminal.</summary>
/// <param name="From">The terminal where it begins.</param>
/// <param name="Hops">What is passed, in order.</param>
public sealed record PathStep(string From, ImmutableArray<PathHop> Hops) : TraceStep
{
    /// <inheritdoc/>
    public override string Label => "path";

    /// <inheritdoc/>
    public override void Accept(ITraceVisitor visitor) => visitor.Visit(this);

    /// <summary>All terminals passed, both ends included.</summary>
    public ImmutableArray<string> Terminals => [From, .. Hops.Select(h => h.To)];

    /// <summary>As a finger follows it: <c>S1:C - J1:5 - W3 - A1:IN2</c>; wires and nets are named, plain meetings are not.</summary>
    public override string ToString() => string.Join(
        " - ", Hops.SelectMany(h => h.Words.Length > 0 ? [h.Words, h.To] : new[] { h.To }).Prepend(From));
}

/// <summary>A joint, a contact or a device that a path passes, and the terminal behind it.</summary>
/// <param name="Over">What is passed.</param>
/// <param name="Name">
/// The name of the wire, net, strip, board, switch or device; empty where two contacts or a contact and what is behind it meet.
/// </param>
/// <param name="To">The terminal at its far end.</param>
public sealed record PathHop(PathOver Over, string Name, string To)
{
    /// <summary>What a path says of it between the two terminals; empty where the terminals themselves say it.</summary>
    public string Words => Over switch
    {
        PathOver.Wire => Name,
        PathOver.Net => $"net {Name}",
        PathOver.Jumper => "jumper",
        PathOver.BoardGround => "board",
        PathOver.NotTraced => $"perhaps inside {Name}",
        _ => "",
    };
}

/// <summary>What a path passes.</summary>
public enum PathOver
{
    /// <summary>A wire or the core of a cable.</summary>
    Wire,

    /// <summary>A stated net.</summary>
    Net,

    /// <summary>A jumper bar.</summary>
    Jumper,

    /// <summary>A board that joins its ground terminals.</summary>
    BoardGround,

    /// <summary>Two mated contacts.</summary>
    Mate,

    /// <summary>The wiring inside a made unit.</summary>
    Attachment,

    /// <summary>What may be joined inside a unit that is not traced.</summary>
    NotTraced,

    /// <summary>A closed contact of a switch or a relay.</summary>
    Contact,

    /// <summary>A device: fuse, lamp, coil, resistor, diode.</summary>
    Device,
}

/// <summary>How things stand; nothing named means that everything is at rest.</summary>
/// <param name="Things">What is not at rest, in order.</param>
public sealed record StateStep(ImmutableArray<StandingThing> Things) : TraceStep
{
    /// <inheritdoc/>
    public override string Label => "state";

    /// <inheritdoc/>
    public override void Accept(ITraceVisitor visitor) => visitor.Visit(this);

    /// <summary><c>LEVER reverse, K1 operated</c>, or <c>everything at rest</c>.</summary>
    public override string ToString() => Things.IsEmpty ? "everything at rest" : string.Join(", ", Things.Select(t => $"{t.Name} {t.Stands}"));
}

/// <summary>How one actuator, coil or supply stands.</summary>
/// <param name="Name">Which.</param>
/// <param name="Stands">A position, <c>operated</c>, <c>released</c>, <c>on</c> or <c>off</c>.</param>
public sealed record StandingThing(string Name, string Stands);

/// <summary>Something that is so, in words, with what it is about and its figures as data.</summary>
/// <param name="Words">The words.</param>
public sealed record FactStep(string Words) : TraceStep
{
    /// <summary>What it is about.</summary>
    public ImmutableArray<Subject> Subjects { get; init; } = [];

    /// <summary>The figures in it.</summary>
    public ImmutableArray<FindingValue> Values { get; init; } = [];

    /// <inheritdoc/>
    public override string Label => "fact";

    /// <inheritdoc/>
    public override void Accept(ITraceVisitor visitor) => visitor.Visit(this);

    /// <inheritdoc/>
    public override string ToString() => Words;
}
