using Schematic.Analysis.Circuits;
using Schematic.Analysis.Electrical;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>The worst values of semiconductors over the cases added so far.</summary>
internal sealed class OutputTally
{
    private readonly List<(Part Part, TerminalPair Ends, int[] Elements, double Peak)> _watched = [];

    /// <summary>Finds what there is to watch.</summary>
    public OutputTally(Circuit circuit)
    {
        foreach (var part in circuit.Panel.Parts)
        {
            if (part is ISemiconductorOutput output) Watch(circuit, part, output.Output, e => e.Outer == part.At(output.Output.From), 1);
            if (part is BridgeRectifier) Watch(circuit, part, part.Halves[0].Ends, e => e.To.Name == "+", HalfWaves.Peak);
        }

        (Amps, Forward, Backward) = (new Peak[_watched.Count], new Peak[_watched.Count], new Peak[_watched.Count]);
    }

    /// <summary>What is watched.</summary>
    public IEnumerable<Part> Parts => _watched.Select(w => w.Part);

    /// <summary>Amperes through each.</summary>
    public Peak[] Amps { get; }

    /// <summary>Volts from collector to emitter, or between the alternating terminals.</summary>
    public Peak[] Forward { get; }

    /// <summary>Volts from emitter to collector.</summary>
    public Peak[] Backward { get; }

    /// <summary>Takes in one case.</summary>
    public void Add(CaseSolution solution)
    {
        for (var i = 0; i < _watched.Count; i++)
        {
            var (part, ends, elements, peak) = _watched[i];
            // In each half-wave another diode of a bridge carries the current.
            Amps[i].Raise(Math.Sqrt(elements.Sum(e => solution.ElementAmps(e) * solution.ElementAmps(e))), solution.Case);
            if (solution.Volts(part.At(ends.From), part.At(ends.To)) is not { } volts) continue;
            var isAlternating = peak > 1 && solution.Alternates;
            Forward[i].Raise(Math.Abs(isAlternating ? peak * volts : peak > 1 ? volts : Math.Max(0, volts)), solution.Case);
            Backward[i].Raise(Math.Max(0, -volts), solution.Case);
        }
    }

    private void Watch(Circuit circuit, Part part, TerminalPair ends, Func<Element, bool> isCounted, double peak) => _watched.Add((
        part, ends,
        [.. Enumerable.Range(0, circuit.Elements.Length).Where(i => circuit.Elements[i].Part == part && circuit.Elements[i].Kind == ElementKind.Diode && isCounted(circuit.Elements[i]))],
        peak));
}
