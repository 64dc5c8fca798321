using System.Diagnostics;
using System.Globalization;

namespace Schematic.Benchmarks.Fuzz;

/// <summary>
/// <c>fuzz [minutes] [first seed]</c>: mutants of everything the project shows, one after the other, each from its number alone. Prints
/// the number of each failure with the text beside it; <c>fuzz one SEED</c> runs that again.
/// </summary>
internal sealed class FuzzRun
{
    private const int DrawEvery = 20;
    private const int ReadingsEvery = 7;
    private static readonly TimeSpan Slow = TimeSpan.FromSeconds(20);
    private static readonly TimeSpan Hung = TimeSpan.FromMinutes(4);

    private readonly FuzzCorpus _corpus = new(RepositoryRoot.Find());
    private readonly FuzzMutator _mutator;
    private readonly FuzzChecks _checks;
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "schematic-fuzz");
    private volatile string _at = "";

    private FuzzRun()
    {
        _mutator = new FuzzMutator(_corpus);
        _checks = new FuzzChecks(_corpus);
    }

    /// <summary>Runs the command; the exit code is 1 when anything failed.</summary>
    public static int Run(string[] args)
    {
        int Number(int place, int usual) => args.Length > place ? int.Parse(args[place], CultureInfo.InvariantCulture) : usual;
        return args is ["one", ..]
            ? new FuzzRun().Run(TimeSpan.MaxValue, Number(1, 1), 1)
            : new FuzzRun().Run(TimeSpan.FromMinutes(Number(0, 1)), Number(1, 1), int.MaxValue);
    }

    private int Run(TimeSpan time, int first, int most)
    {
        Directory.CreateDirectory(_folder);
        var watch = Stopwatch.StartNew();
        var tried = 0;
        var failures = 0;
        for (; tried < most && watch.Elapsed < time; tried++)
        {
            if (Try(first + tried) is not { } failure) continue;
            failures++;
            Console.WriteLine($"seed {first + tried}: {failure}");
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{tried:n0} inputs, {tried / watch.Elapsed.TotalSeconds:0} a second, {failures} failures; {_checks.Sheets:n0} sheets, {_checks.SheetsWithFaults} of them told as not drawn as they should be"));
        return failures == 0 ? 0 : 1;
    }

    /// <summary>One mutant; what is wrong with it, or null. A stage that does not end is told and ends the program: its thread cannot be stopped.</summary>
    private string? Try(int seed)
    {
        var readings = seed % ReadingsEvery == 0 && !_corpus.Readings.IsEmpty;
        var text = _mutator.Mutate(readings ? _corpus.Readings : _corpus.Panels, seed);
        string? failure = null;
        var worker = new Thread(() => failure = Judge(text, readings, seed), 64 << 20);
        worker.Start();
        if (!worker.Join(Hung))
        {
            Keep(seed, text);
            Console.WriteLine($"seed {seed}: '{_at}' does not end");
            Environment.Exit(1);
        }

        if (failure is not null) Keep(seed, text);
        return failure;
    }

    private string? Judge(FuzzText text, bool readings, int seed)
    {
        var began = Process.GetCurrentProcess().TotalProcessorTime;
        var slowest = (Stage: "", Time: TimeSpan.Zero);
        void Step(string stage)
        {
            var now = Process.GetCurrentProcess().TotalProcessorTime;
            if (now - began > slowest.Time) slowest = (_at, now - began);
            (began, _at) = (now, stage);
        }

        try
        {
            if (readings) FuzzChecks.Readings(text, Beside(seed), Step);
            else _checks.Panel(text, seed % DrawEvery == 0, Step);
            Step("");
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            return $"'{_at}' {text.Name}: {fault.GetType().Name}: {fault.Message.ReplaceLineEndings(" ")} {Place(fault)}";
        }

        return slowest.Time > Slow ? string.Create(CultureInfo.InvariantCulture, $"'{slowest.Stage}' {text.Name}: took {slowest.Time.TotalSeconds:0} s") : null;
    }

    private Model.Panel Beside(int seed)
    {
        var panel = _corpus.Panels[seed % _corpus.Panels.Length];
        return _checks.Load(panel.Name, panel.Text).Panel;
    }

    private static string Place(Exception fault) => fault is FuzzException ? ""
        : fault.StackTrace?.Split('\n').Select(l => l.Trim()).FirstOrDefault(l => l.Contains("Schematic", StringComparison.Ordinal)) ?? "";

    private void Keep(int seed, FuzzText text) =>
        File.WriteAllText(Path.Combine(_folder, string.Create(CultureInfo.InvariantCulture, $"{seed}.panel")), text.Text);
}
