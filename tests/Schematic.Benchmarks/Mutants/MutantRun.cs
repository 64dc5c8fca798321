using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace Schematic.Benchmarks.Mutants;

/// <summary>
/// <c>mutants BUILT REPORT FOLDER EVERY TESTS...</c>: runs the mutants that Stryker.NET made of one folder of the library. Stryker starts a host
/// of tests for each mutant, two seconds of processor time; here they run one after the other in one process, and a folder takes
/// minutes. BUILT is the folder with the changed library and the tests, REPORT its list of mutants; EVERY 1 takes all of them, 3 each third, 3+1 each third from the second on, =5,17 those two.
/// They are run in an order without order, and each twentieth says how many were noticed: a run that is stopped has a figure of the whole folder.
/// </summary>
internal static class MutantRun
{
    private const string Worker = "mutants-worker";
    private const int Told = 20;
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(30);

    /// <summary>Runs the command, or is the worker of one.</summary>
    public static int Run(string[] args) => args switch
    {
        [Worker, var built, var filter] => MutantWorker.Run(built, filter.Split(',')),
        [Worker, var built, var filter, var number] => MutantWorker.RunEarly(built, filter.Split(','), int.Parse(number, CultureInfo.InvariantCulture)),
        [var built, var report, var folder, var every, .. var tests] when tests.Length > 0 && Sample(every) is { } isTaken =>
            Run(built, report, folder, isTaken, string.Join(',', tests)),
        _ => throw new ArgumentException("mutants BUILT REPORT FOLDER EVERY TESTS..."),
    };

    /// <summary>Each how many, and from which on: <c>8</c>, or <c>8+3</c> for another sample of the same size; <c>=5,17</c> are single ones.</summary>
    private static Func<Mutant, int, bool>? Sample(string every)
    {
        if (every.StartsWith('=')) return (m, _) => every[1..].Split(',').Contains(m.Number.ToString(CultureInfo.InvariantCulture));
        var parts = every.Split('+');
        if (!int.TryParse(parts[0], CultureInfo.InvariantCulture, out var step) || step < 1) return null;
        var first = parts.Length > 1 && int.TryParse(parts[1], CultureInfo.InvariantCulture, out var told) ? told : 0;
        return (_, i) => i % step == first;
    }

    private static int Run(string built, string report, string folder, Func<Mutant, int, bool> isTaken, string filter)
    {
        var all = Mutant.Read(report, folder);
        var mutants = all.Where(isTaken).ToList();
        Console.WriteLine($"{folder}: {mutants.Count} of {all.Count} mutants, tests {filter}");
        built = Path.GetFullPath(built);
        var mixed = mutants.ToArray();
        new Random(1).Shuffle(mixed);
        var waiting = new ConcurrentQueue<Mutant>(mixed);
        List<Mutant> early = [];
        while (!waiting.IsEmpty) Serve(built, filter, mutants, waiting, early);
        foreach (var mutant in early)
        {
            mutant.Fate = Early(built, filter, mutant.Number);
            if (!mutant.IsNoticed) Console.WriteLine($"{mutant.Fate.Split(' ')[0]} {mutant.Number} {mutant.Words}");
        }

        Print(mutants);
        return 0;
    }

    /// <summary>One worker, until nothing waits or it ends over a mutant: that one was noticed.</summary>
    private static void Serve(string built, string filter, List<Mutant> mutants, ConcurrentQueue<Mutant> waiting, List<Mutant> early)
    {
        using var worker = Start(Worker, built, filter);
        while (waiting.TryPeek(out var mutant))
        {
            worker.StandardInput.WriteLine(mutant.Number);
            worker.StandardInput.Flush();
            var fate = Answer(worker);
            waiting.TryDequeue(out _);
            mutant.Fate = fate ?? "killed: the process ended";
            if (mutant.Fate == "early") early.Add(mutant);
            else if (!mutant.IsNoticed) Console.WriteLine($"{mutant.Fate.Split(' ')[0]} {mutant.Number} {mutant.Words}");
            if ((mutants.Count - waiting.Count) % Told == 0) Console.WriteLine(Line("so far", [.. mutants.Where(m => m.Fate.Length > 0)]));
            if (fate is null) break;
        }

        worker.StandardInput.Close();
        if (!worker.WaitForExit(2000)) worker.Kill();
    }

    private static string? Answer(Process worker)
    {
        while (true)
        {
            var line = worker.StandardOutput.ReadLineAsync();
            if (!line.Wait(Longest))
            {
                worker.Kill();
                return null;
            }

            if (line.Result is not { } text) return null;
            if (text.StartsWith("! ", StringComparison.Ordinal)) Console.WriteLine(text);
            if (text.StartsWith("= ", StringComparison.Ordinal)) return text[2..];
        }
    }

    private static string Early(string built, string filter, int number)
    {
        using var worker = Start(Worker, built, filter, number.ToString(CultureInfo.InvariantCulture));
        var fate = Answer(worker) ?? "killed: the process ended";
        if (!worker.WaitForExit(2000)) worker.Kill();
        return fate;
    }

    private static Process Start(params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardInput = true, RedirectStandardOutput = true };
        foreach (var argument in (string[])[typeof(MutantRun).Assembly.Location, "mutants", .. arguments]) start.ArgumentList.Add(argument);
        start.Environment["DOTNET_GCHeapHardLimit"] = "0x60000000"; // What takes memory without end is noticed by that.
        start.Environment["DOTNET_gcServer"] = "0";
        start.Environment["DOTNET_TieredPGO"] = "0";
        return Process.Start(start)!;
    }

    private static void Print(List<Mutant> mutants)
    {
        foreach (var file in mutants.GroupBy(m => m.File).OrderBy(g => g.Key, StringComparer.Ordinal)) Console.WriteLine(Line(file.Key, [.. file]));
        Console.WriteLine(Line("all", mutants));
    }

    private static string Line(string name, List<Mutant> mutants)
    {
        int Count(string fate) => mutants.Count(m => m.Fate.StartsWith(fate, StringComparison.Ordinal));
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{name,-40} {mutants.Count,5} mutants: {Count("killed")} noticed, {Count("timeout")} without end, {Count("survived")} survived, {Count("uncovered")} not reached, {Count("early")} to be run by themselves: {100.0 * mutants.Count(m => m.IsNoticed) / mutants.Count:0.0} %");
    }
}

/// <summary>A change that Stryker made.</summary>
internal sealed class Mutant
{
    /// <summary>Its number, by which it is woken.</summary>
    public required int Number { get; init; }

    /// <summary>The file that it changes, by its name.</summary>
    public required string File { get; init; }

    /// <summary>Where it is and what it changes into what.</summary>
    public required string Words { get; init; }

    /// <summary>What became of it.</summary>
    public string Fate { get; set; } = "";

    /// <summary>Whether a test failed, or did not end.</summary>
    public bool IsNoticed => Fate.StartsWith("killed", StringComparison.Ordinal) || Fate.StartsWith("timeout", StringComparison.Ordinal);

    /// <summary>The mutants of a folder that Stryker would run: those that compile and are not left out by its configuration.</summary>
    public static List<Mutant> Read(string report, string folder)
    {
        using var read = JsonDocument.Parse(System.IO.File.ReadAllText(report));
        List<Mutant> found = [];
        foreach (var file in read.RootElement.GetProperty("files").EnumerateObject())
        {
            var path = file.Name.Replace('\\', '/');
            if (!path.Contains($"/{folder}/", StringComparison.Ordinal) && !path.StartsWith(folder + "/", StringComparison.Ordinal)) continue;
            var source = file.Value.GetProperty("source").GetString()!.Split('\n');
            foreach (var mutant in file.Value.GetProperty("mutants").EnumerateArray())
            {
                if (mutant.GetProperty("status").GetString() is "CompileError" or "Ignored") continue;
                var (start, end) = (mutant.GetProperty("location").GetProperty("start"), mutant.GetProperty("location").GetProperty("end"));
                var (line, column, last, until) = (start.GetProperty("line").GetInt32(), start.GetProperty("column").GetInt32(), end.GetProperty("line").GetInt32(), end.GetProperty("column").GetInt32());
                var text = source[line - 1];
                var before = line == last ? text[(column - 1)..Math.Min(text.Length, until - 1)] : text[(column - 1)..].Trim() + " ...";
                var after = mutant.GetProperty("replacement").GetString()!.ReplaceLineEndings(" ");
                found.Add(new Mutant
                {
                    Number = int.Parse(mutant.GetProperty("id").GetString()!, CultureInfo.InvariantCulture),
                    File = Path.GetFileName(path),
                    Words = $"{Path.GetFileName(path)}:{line} `{before}` -> `{(after.Length > 160 ? after[..160] + "..." : after)}`",
                });
            }
        }

        return [.. found.OrderBy(m => m.Number)];
    }
}
