using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>What is asked of the proof in every position about loads: the proof uses the loads' judge, never the other way.</summary>
internal interface IProvenPositions
{
    /// <summary>The circuit whose nodes are joined under conditions.</summary>
    ConditionalCircuit Circuit { get; }

    /// <summary>The states that can be reached.</summary>
    StateSpace States { get; }

    /// <summary>Says when a load works behind its wires.</summary>
    WiredJudge Judge { get; }

    /// <summary>Whether a supply is surely shorted somewhere: nothing else is then worth telling.</summary>
    bool HasShort { get; }

    /// <summary>Locks that nothing ever releases, each with the position it holds.</summary>
    ImmutableArray<(ActuatorLock Lock, string Position)> StuckLocks { get; }

    /// <summary>Whether a load works in any position.</summary>
    bool EverWorks(Element load);
}
