using System.Globalization;
using Schematic.Bench;
using Schematic.Bench.Diagnosis;
using Schematic.Bench.Faults;
using Schematic.Bench.RingOut;
using Schematic.Binding;
using Schematic.Tests.Bench;
using Schematic.Tests.Generators;

namespace Schematic.Benchmarks;

/// <summary>
/// Writes the readings file that a person brings home who measured a faulty unit, or measured it wrong: what the plain dense solver
/// reads at each step of the ring-out.
/// </summary>
internal static class BenchNotes
{
    /// <summary>Prints a panel file that is measured at the bench: a generated unit, or a panel with one thing in plenty.</summary>
    public static int PrintPanel(string name, int size, string[] seed)
    {
        Console.Write(name == "unit" ? UnitGenerator.Generate(seed.Length == 0 ? 1 : int.Parse(seed[0], CultureInfo.InvariantCulture), size) : GrowthPanels.TextOf(name, size));
        return 0;
    }

    /// <summary>
    /// Prints the file. Words that stand in a fault or a mistake of the catalogue choose it; a number leaves all but the first steps blank;
    /// without words all faults and mistakes are listed.
    /// </summary>
    public static int Run(string path, BenchSide side, string[] words)
    {
        var panel = PanelLoader.LoadFile(path).Panel;
        var circuit = BenchCircuit.Read(panel, side);
        var (faults, mistakes) = (FaultCatalogue.All(circuit), MistakeCatalogue.All(circuit));
        if (words.Length == 0)
        {
            foreach (var line in mistakes.Select(m => m.Words).Concat(faults.Select(f => f.Words))) Console.WriteLine(line);
            return 0;
        }

        var most = words.Select(w => int.TryParse(w, CultureInfo.InvariantCulture, out var number) ? number : int.MaxValue).Min();
        words = [.. words.Where(w => !int.TryParse(w, CultureInfo.InvariantCulture, out _))];
        bool Is(string text) => words.Any(w => text.Contains(w, StringComparison.Ordinal));
        var mistake = mistakes.FirstOrDefault(m => Is(m.Words)) ?? (words.Contains("leads") ? new Mistake(MistakeKind.NotZeroed, 1e-2, "leads") { LeadOhms = 4 } : null);
        var truth = new Explanation([.. words.SelectMany(w => faults.Where(f => f.Words.Contains(w, StringComparison.Ordinal)).Take(1))], mistake);
        var person = new SimulatedPerson(circuit, truth);
        var plan = RingOutPlanner.Plan(circuit);
        var lines = RingOutReadings.Write(plan, Path.GetFileName(path), null).Split('\n');
        var step = 0;
        Console.WriteLine($"# {truth.Words}");
        foreach (var line in lines)
        {
            var isBlank = line.StartsWith("  ", StringComparison.Ordinal) && line.Contains(" ?", StringComparison.Ordinal);
            Console.WriteLine(isBlank && step < most ? line.Replace(" ?", " " + person.Note(plan.Steps[step].Placement).Value!.Text, StringComparison.Ordinal) : line);
            if (isBlank) step++;
        }

        return 0;
    }
}
