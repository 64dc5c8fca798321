using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>A load that is fed and can never work, because it always gets too little.</summary>
/// <param name="Load">The load.</param>
/// <param name="Volts">The most it gets, wires and sources counted.</param>
/// <param name="Amps">Its current then.</param>
/// <param name="Best">The position in which it gets most.</param>
/// <param name="Lost">What the rest of the supply's volts is lost in, the most first.</param>
public sealed record WeakLoad(
    Element Load, double Volts, double Amps, Witness Best, ImmutableArray<(string Name, double Volts)> Lost)
{
    /// <summary>The loads that can never work because of it, in the order of the file.</summary>
    public ImmutableArray<Element> Followers { get; init; } = [];

    /// <summary>The locks that are never released because of it, each with the position it holds.</summary>
    public ImmutableArray<(ActuatorLock Lock, string Position)> Locks { get; init; } = [];
}
