using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.Positions;
using Schematic.Analysis.States;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Reports;

/// <summary>
/// The combinations that a chart of one actuator cannot show, in words: what decides about a load or an input in a position in
/// which it may go either way, such as "RING pressed: K1 ON while SILENCE is released".
/// </summary>
internal sealed class ContactCombinations
{
    // On so large a panel the words would fill sheets, and nobody would read them.
    private const int MostQuestions = 4000;

    private readonly PositionProof _proof;
    private readonly ImmutableArray<(string Name, string Word, Diagram On)> _answers;
    private readonly ImmutableArray<string> _latches;

    /// <summary>Prepares what is asked about: loads by ON, inputs by low.</summary>
    public ContactCombinations(AnalysisContext context)
    {
        _proof = context.Positions;
        var circuit = _proof.Circuit;
        _answers =
        [
            .. circuit.Circuit.Loads.Select(l => (l.Name, "ON", circuit.Energised(l))),
            .. circuit.Circuit.Inputs.Where(i => i.GroundNode >= 0).Select(i => (i.Terminal.ToString(), "low", circuit.Reads(i, InputLevel.Low))),
        ];
        _latches = _proof.States.Latches;
    }

    /// <summary>A sentence for each position with something to say; what is alike in all positions is not this actuator's doing.</summary>
    public IEnumerable<string> Of(Actuator actuator)
    {
        if (_answers.Length * actuator.Positions.Length * _proof.Circuit.Variables.All.Length > MostQuestions)
            return ["Which combinations decide where a bar is outlined is left out here: there are too many."];
        var store = _proof.Circuit.Store;
        var here = actuator.Positions.Select(p => store.And(
            _proof.Working, _proof.Circuit.Compile(new PositionCondition(actuator.Name, [p.Name], SourceSpan.None)))).ToList();
        var told = _answers.Select(a => (a.Name, Words: here.Select(h => WordsOf(actuator, h, a)).ToList()))
            .Where(t => t.Words.Distinct(StringComparer.Ordinal).Count() > 1).ToList();
        return actuator.Positions.Select((p, i) => Sentence($"{actuator.Name} {p.Name}", told.Select(t => (t.Name, t.Words[i])))).Where(s => s.Length > 0);
    }

    private static string Sentence(string head, IEnumerable<(string Name, string Words)> told)
    {
        var parts = told.Where(t => t.Words.Contains(' ', StringComparison.Ordinal)).GroupBy(t => t.Words, StringComparer.Ordinal)
            .Select(g => $"{NameList.Sentence(g.Select(t => t.Name))} {g.Key}").ToList();
        return parts.Count == 0 ? "" : $"{head}: {string.Join("; ", parts)}.";
    }

    /// <summary>One word where nothing else decides, otherwise what decides; empty where it takes more than one thing to say it.</summary>
    private string WordsOf(Actuator actuator, Diagram here, (string Name, string Word, Diagram On) answer)
    {
        var store = _proof.Circuit.Store;
        var off = answer.Word == "ON" ? "off" : "not low";
        var (on, not) = (_proof.States.Reachable(store.And(here, answer.On)), _proof.States.Reachable(store.AndNot(here, answer.On)));
        if (on.IsNever) return "";
        if (not.IsNever) return answer.Word;
        var sure = new List<string>();
        foreach (var (variable, index) in Others(actuator.Name, answer.Name))
        {
            var values = Enumerable.Range(0, variable.Values.Length).ToList();
            bool Can(Diagram when, int value) => !store.And(when, store.Literal(index, value)).IsNever;
            var onlyOn = values.Where(v => Can(on, v) && !Can(not, v)).ToList();
            var onlyOff = values.Where(v => !Can(on, v) && Can(not, v)).ToList();
            if (onlyOn.Count == 0 && onlyOff.Count == 0) continue;
            if (!values.Any(v => Can(on, v) && Can(not, v))) return $"{answer.Word} {While(variable, onlyOn)}";
            sure.Add(onlyOn.Count > 0 ? $"{answer.Word} {While(variable, onlyOn)}" : $"{off} {While(variable, onlyOff)}");
        }

        var remembers = _latches.Contains(answer.Name) ? ", else as it was before" : "";
        return sure.Count == 0 ? "" : string.Join(", ", sure) + remembers;
    }

    /// <summary>What else may decide: other actuators before coils, never the coil that is asked about.</summary>
    private IEnumerable<(StateVariable Variable, int Index)> Others(string actuator, string asked) => _proof.Circuit.Variables.All
        .Select((v, i) => (Variable: v, Index: i))
        .Where(v => v.Variable.Kind is StateVariableKind.Actuator or StateVariableKind.Coil or StateVariableKind.Delay && v.Variable.Name != actuator && v.Variable.Name != asked)
        .OrderBy(v => v.Variable.Kind).ThenBy(v => v.Variable.Name, NaturalOrder.Comparer);

    private static string While(StateVariable variable, List<int> values) =>
        $"while {variable.Name} is {string.Join(" or ", values.Select(v => variable.Values[v]))}";
}
