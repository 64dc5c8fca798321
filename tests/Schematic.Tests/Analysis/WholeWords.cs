using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Model;

namespace Schematic.Tests.Analysis;

/// <summary>Figures and conditions of the analysis as words that a person compares.</summary>
internal static class WholeWords
{
    /// <summary>So many ways to fulfil a condition are told; of more their number.</summary>
    private const int MostWays = 12;

    /// <summary>So many cases of one load are told; of more their number.</summary>
    private const int MostCases = 16;

    /// <summary>Six figures; what is left of a rounding error is nought, and what nothing bounds is said so.</summary>
    public static string Number(double value) => Math.Abs(value) < 1e-7 ? "0"
        : double.IsInfinity(value) ? "no bound"
        : value.ToString("G6", CultureInfo.InvariantCulture);

    public static string Number(double? value) => value is { } known ? Number(known) : "-";

    /// <summary>A condition of the model, in the words of the language as far as it has them.</summary>
    public static string Words(Condition? condition) => condition switch
    {
        null => "always there",
        AllCondition { Parts.IsEmpty: true } => "always",
        AllCondition all => $"({string.Join(" and ", all.Parts.Select(Words))})",
        AnyCondition any => $"({string.Join(" or ", any.Parts.Select(Words))})",
        PositionCondition position => $"{position.Actuator} {string.Join(' ', position.Positions)}",
        UntracedCondition untraced => $"{untraced.Actuator} ?",
        EnergisedCondition energised => $"{energised.Part} {(energised.Energised ? "energised" : "released")}",
        DelayedCondition delayed => $"{delayed.Relay} {delayed.Word}",
        SupplyCondition supply => $"{supply.Supply} {(supply.On ? "on" : "off")}",
        var other => other.GetType().Name,
    };

    /// <summary>A condition over the state variables: each way to fulfil it, in the order in which it is asked.</summary>
    public static string Words(ConditionalCircuit circuit, Diagram condition)
    {
        if (condition.IsNever) return "never";
        if (condition.IsAlways) return "always";
        var ways = Ways(circuit, condition, "").Take(MostWays + 1).ToList();
        return ways.Count > MostWays ? $"{string.Join(" | ", ways.Take(3))} | ... in {circuit.Store.Count(condition)} states" : string.Join(" | ", ways);
    }

    /// <summary>A state: all that does not stand as it does before anybody touches anything.</summary>
    public static string Words(ConditionalCircuit circuit, PanelState state)
    {
        var things = circuit.Variables.All.Select((v, i) => (Variable: v, Value: state.Values[i])).Where(p => p.Value != p.Variable.Rest)
            .Select(p => Words(p.Variable, p.Value));
        return string.Join(", ", things) is { Length: > 0 } words ? words : "rest";
    }

    /// <summary>One value of a variable; of a moment between two values both.</summary>
    public static string Words(StateVariable variable, int value)
    {
        var kind = variable.Kind is StateVariableKind.Actuator or StateVariableKind.Coil ? "" : $" ({variable.Kind})";
        if (value < variable.Values.Length) return $"{variable.Name}{kind} {variable.Values[value]}";
        var passing = variable.Passings.Single(p => p.Value == value);
        return $"{variable.Name}{kind} between {passing.From} and {passing.To} {passing.Others}";
    }

    private static IEnumerable<string> Ways(ConditionalCircuit circuit, Diagram condition, string before)
    {
        if (condition.IsAlways) return [before];
        if (condition.IsNever) return [];
        var (variable, branches) = circuit.Store.Ask(condition);
        return branches.Select((b, value) => (Branch: b, Value: value)).GroupBy(b => b.Branch).OrderBy(g => g.First().Value).SelectMany(g => Ways(
            circuit, g.Key, (before.Length > 0 ? before + " & " : "") + string.Join('/', g.Select(b => Words(circuit.Variables.All[variable], b.Value)).Select((w, i) => i == 0 ? w : w[(circuit.Variables.All[variable].Name.Length + 1)..]))));
    }

    /// <summary>A terminal list.</summary>
    public static string Words(IEnumerable<TerminalId> terminals) => string.Join(' ', terminals);

    /// <summary>An element by its name and ends, so that two of one part are told apart.</summary>
    public static string Words(Element element) => $"{element.Name} {element.From.Name}>{element.To.Name}";

    /// <summary>Names in one line.</summary>
    public static string Words(IEnumerable<string> names) => $"[{string.Join(' ', names)}]";

    /// <summary>The cases of a load or an input.</summary>
    public static IEnumerable<string> Cases(ConditionalCircuit circuit, ImmutableArray<RegionCase> cases) => cases.Take(MostCases).Select(c =>
        $"  {Number(c.Volts)} V {Number(c.Amps)} A {(c.IsDirect ? "direct " : "")}{Number(c.LowestVolts)}..{Number(c.HighestVolts)} V"
        + $"{(c.Ranged.IsEmpty ? "" : $" by {Words(c.Ranged.Select(Words))} {string.Join(' ', c.Corners.Select(k => $"{Number(k.Volts)}V/{Number(k.Amps)}A/{Number(k.LowestVolts)}..{Number(k.HighestVolts)}"))}")}: {Words(circuit, c.When)}")
        .Concat(cases.Length > MostCases ? [$"  {cases.Length} cases"] : Array.Empty<string>());
}
