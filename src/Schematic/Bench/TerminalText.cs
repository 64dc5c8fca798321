using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Model;

namespace Schematic.Bench;

/// <summary>Names of terminals under a lead, as a readings file writes them: <c>J1:5</c>, <c>J1:1..4 7 frame</c>.</summary>
public static class TerminalText
{
    /// <summary>One terminal.</summary>
    public static string Of(TerminalId terminal) => terminal == BenchCircuit.Frame ? BenchCircuit.FrameName : terminal.ToString();

    /// <summary>Several, by part, runs drawn together.</summary>
    public static string Of(IEnumerable<TerminalId> terminals)
    {
        var all = terminals.ToImmutableArray();
        var parts = all.Where(t => t != BenchCircuit.Frame).GroupBy(t => t.Part)
            .Select(g => $"{g.Key}:{NameList.Compact(g.Select(t => t.Name))}");
        return string.Join(' ', all.Contains(BenchCircuit.Frame) ? parts.Append(BenchCircuit.FrameName) : parts);
    }

    /// <summary>The terminals under a lead.</summary>
    public static string Of(BenchCircuit circuit, ImmutableArray<int> lead) => Of(lead.Select(t => circuit.Terminals[t]));
}
