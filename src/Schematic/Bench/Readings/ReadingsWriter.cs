using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Schematic.Model;

namespace Schematic.Bench.Readings;

/// <summary>Writes readings files: plans with the values left blank, and readings that were taken.</summary>
public sealed class ReadingsWriter
{
    private readonly StringBuilder _text = new();
    private bool _isOpen;

    /// <summary>The head of a file.</summary>
    public ReadingsWriter(string? panelPath, BenchSide side, string? part, string print, IEnumerable<string> remarks)
    {
        Line(panelPath is null ? "readings unknown" : $"readings of \"{Escape(panelPath)}\"");
        Line(side switch { BenchSide.Unit => "unit", BenchSide.Harness => "harness", _ => "mated" } + (part is null ? "" : $" {part}"));
        Line("date \"\"  by \"\"");
        Line("meter \"\"");
        Line("leads 0.3 ohm zeroed  # what the meter shows when the tips touch; zeroed: readings are without it");
        if (print.Length > 0) Line($"print {print}  # of the panel that this plan was made from");
        foreach (var remark in remarks) Line($"# {remark}");
    }

    /// <summary>Whatever the file has to say besides, such as declared connectors.</summary>
    public void AddLines(IEnumerable<string> lines)
    {
        foreach (var line in lines) Line(line);
    }

    /// <summary>Begins the readings of a stand.</summary>
    public void Begin(Stand stand, ImmutableArray<Actuator> actuators, string comment)
    {
        if (_isOpen) Line("}");
        _isOpen = true;
        _text.Append('\n');
        if (comment.Length > 0) Line($"# {comment}");
        Line($"at {StandText.Describe(stand, actuators)} {{");
    }

    /// <summary>A reading; without a value it is left blank.</summary>
    public void Add(MeterTest test, IEnumerable<TerminalId> red, IEnumerable<TerminalId> black, string? value, string comment = "")
    {
        var (from, to) = (TerminalText.Of(red), TerminalText.Of(black));
        var isPair = red.Count() == 1 && black.Count() == 1;
        var joined = MeterTestText.Joined(test, isPair);
        var end = comment.Length == 0 ? "" : $"  # {comment}";
        Line($"  {from}{joined}{to} {value ?? "?"}{MeterTestText.Suffix(test)}{end}");
    }

    /// <summary>The text.</summary>
    public string Finish()
    {
        if (_isOpen) Line("}");
        _isOpen = false;
        return _text.ToString();
    }

    private static string Escape(string text) => text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal);

    private void Line(string line) => _text.Append(CultureInfo.InvariantCulture, $"{line}\n");
}
