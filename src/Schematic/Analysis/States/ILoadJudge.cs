using Schematic.Analysis.Circuits;

namespace Schematic.Analysis.States;

/// <summary>
/// Says what is left of a load's volts behind real wires and sources. The conditions of a circuit are found on ideal joints;
/// a judge corrects them where what the joints lose decides whether a load works.
/// </summary>
public interface ILoadJudge
{
    /// <summary>When a load works.</summary>
    LoadVerdict Of(Element load);

    /// <summary>What a load gets in one state, in volts from its first end to its second.</summary>
    double VoltsIn(Element load, PanelState state);
}
