using BenchmarkDotNet.Attributes;
using Schematic.Binding;
using Schematic.Language;
using Schematic.Text;

namespace Schematic.Benchmarks;

/// <summary>Reading, binding and formatting of files of many statements: wires on two large mated connectors.</summary>
[MemoryDiagnoser]
public class LanguageBenchmarks
{
    private SourceText _source = new("", "");

    /// <summary>How many wire statements the file has.</summary>
    [Params(10_000, 100_000)]
    public int Statements { get; set; }

    /// <summary>Makes the text.</summary>
    [GlobalSetup]
    public void Setup()
    {
        _source = new SourceText("benchmark.panel", GrowthRuns.Wires(Statements));
        Console.WriteLine($"// {Statements} statements are {_source.Content.Length / 1e6:F2} million characters.");
    }

    /// <summary>Text to syntax.</summary>
    [Benchmark(Baseline = true)]
    public int Parse() => PanelParser.Parse(_source).Statements.Length;

    /// <summary>Text to model.</summary>
    [Benchmark]
    public int Load() => PanelLoader.Load(_source, MemoryPanelFiles.None).Panel.Wires.Length;

    /// <summary>Text to evenly laid out text.</summary>
    [Benchmark]
    public int Format() => PanelFormatter.Format(_source.Content).Length;
}
