using System.Collections;
using System.Diagnostics;
using System.Globalization;
using System.Reflection;

namespace Schematic.Benchmarks.Mutants;

/// <summary>
/// Runs tests against one mutant after the other in one process. Everything ran once before, unchanged, so what is made once for all
/// is sound; a mutant that changes such a thing is run by a process of its own, in which it is awake from the beginning.
/// </summary>
internal sealed class MutantWorker
{
    private const int Asleep = -1;
    private static readonly TimeSpan LeastTime = TimeSpan.FromSeconds(4);
    private static readonly TimeSpan MostTime = TimeSpan.FromMinutes(3);

    /// <summary>A test that takes longer is left out, and no more than so much is spent on one mutant: what then stands may fall to the others.</summary>
    private static readonly TimeSpan Slowest = TimeSpan.FromSeconds(2), Budget = TimeSpan.FromSeconds(6);

    /// <summary>Counting makes a test up to a hundred times slower: after so much the rest of it is run uncounted.</summary>
    private static readonly TimeSpan Counted = TimeSpan.FromSeconds(1);

    private readonly List<MutantCase> _cases;
    private readonly FieldInfo _active;
    private readonly FieldInfo _captures;
    private readonly MethodInfo _reset;
    private readonly MethodInfo _covered;
    private readonly Dictionary<int, List<int>> _coveredBy = [];
    private readonly HashSet<int> _early = [];
    private readonly HashSet<int> _left = [];
    private readonly TimeSpan[] _took;
    private readonly HashSet<int> _always;

    private MutantWorker(string folder, string[] filter)
    {
        AppContext.SetData("APP_CONTEXT_BASE_DIRECTORY", folder + Path.DirectorySeparatorChar); // Where the tests look for their files.
        var (tests, library) = MutantCase.Load(folder);
        var control = library.GetTypes().Single(t => t.Name == "MutantControl");
        FieldInfo Field(string name) => control.GetField(name, BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic) ?? throw new MissingFieldException(control.FullName, name);
        MethodInfo Method(string name) => control.GetMethod(name, BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic) ?? throw new MissingMethodException(control.FullName, name);
        (_active, _captures, _reset, _covered) = (Field("ActiveMutant"), Field("CaptureCoverage"), Method("ResetCoverage"), Method("GetCoverageData"));
        _cases = MutantCase.Of(tests, filter);
        _took = new TimeSpan[_cases.Count];
        _always = [.. Enumerable.Range(0, _cases.Count).Where(i => _cases[i].IsForEach)];
    }

    /// <summary>Runs the mutants that are read, a number a line, and writes what became of each, a line.</summary>
    public static int Run(string folder, string[] filter)
    {
        var worker = new MutantWorker(folder, filter);
        worker.Learn();
        while (Console.ReadLine() is { } line)
        {
            var number = int.Parse(line, CultureInfo.InvariantCulture);
            var (fate, isStuck) = worker.FateOf(number);
            Console.WriteLine($"= {fate}");
            if (isStuck) Environment.Exit(3);
        }

        return 0;
    }

    /// <summary>Runs all tests with one mutant that is awake from the beginning.</summary>
    public static int RunEarly(string folder, string[] filter, int number)
    {
        var worker = new MutantWorker(folder, filter);
        worker._active.SetValue(null, number);
        for (var i = 0; i < worker._cases.Count; i++)
        {
            var (failure, isStuck) = worker.Try(i, MostTime);
            if (failure is null) continue;
            Console.WriteLine($"= {(isStuck ? "timeout" : "killed")} {worker._cases[i].Name}");
            Environment.Exit(0);
        }

        Console.WriteLine("= survived");
        return 0;
    }

    /// <summary>
    /// Which mutants each test comes past, and how long it takes; the second time nothing is counted, and everything is compiled. Of those
    /// that are run for each mutant nothing is counted.
    /// </summary>
    private void Learn()
    {
        _active.SetValue(null, Asleep);
        for (var i = 0; i < _cases.Count; i++)
        {
            if (_always.Contains(i)) continue;
            _captures.SetValue(null, true);
            _reset.Invoke(null, null);
            if (!Passes(i)) continue;
            var data = (IEnumerable[])_covered.Invoke(null, null)!;
            _early.UnionWith(data[1].Cast<int>());
            foreach (var number in data[0].Cast<int>().Distinct())
            {
                if (!_coveredBy.TryGetValue(number, out var by)) _coveredBy[number] = by = [];
                by.Add(i);
            }
        }

        _captures.SetValue(null, false);
        for (var i = 0; i < _cases.Count; i++)
        {
            if (_left.Contains(i) || (_always.Contains(i) && !Passes(i))) continue;
            var began = Environment.CpuUsage.TotalTime;
            if (!Passes(i)) continue;
            _took[i] = Environment.CpuUsage.TotalTime - began;
            if (_took[i] > Slowest) _left.Add(i);
        }

        foreach (var by in _coveredBy.Values) by.RemoveAll(_left.Contains);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"! {_cases.Count} tests, {_took.Sum(t => t.TotalSeconds):0.0} s of processor time; {_left.Count} left out, failing unchanged or slower than {Slowest.TotalSeconds:0.0} s"));
    }

    private bool Passes(int i)
    {
        if (Try(i, MostTime).Failure is not { } failure) return true;
        _left.Add(i);
        Console.WriteLine($"! {_cases[i].Name} fails unchanged: {failure}");
        return false;
    }

    private (string Fate, bool IsStuck) FateOf(int number)
    {
        var isEarly = _early.Contains(number);
        var by = _coveredBy.GetValueOrDefault(number, []).Union(_always.Except(_left)).ToList();
        if (by.Count == 0) return (isEarly ? "early" : "uncovered", false);
        _active.SetValue(null, number);
        try
        {
            var spent = TimeSpan.Zero;
            foreach (var i in by.OrderBy(i => _took[i]))
            {
                if ((spent += _took[i]) > Budget) break;
                var (failure, isStuck) = Try(i, _took[i] * 8 > LeastTime ? _took[i] * 8 : LeastTime);
                if (failure is null) continue;
                return ($"{(failure == "time" ? "timeout" : "killed")} {_cases[i].Name}", isStuck);
            }
        }
        finally
        {
            _active.SetValue(null, Asleep);
        }

        return (isEarly ? "early" : $"survived {by.Count}", false);
    }

    /// <summary>Runs one test on a thread of its own. What does not end is let go by putting the mutant to sleep; if that does not end it, it is stuck.</summary>
    private (string? Failure, bool IsStuck) Try(int i, TimeSpan most)
    {
        string? failure = null;
        var thread = new Thread(
            () =>
            {
                try
                {
                    _cases[i].Call();
                }
                catch (Exception fault)
                {
                    failure = (fault is TargetInvocationException { InnerException: { } inner } ? inner : fault).Message.Split('\n')[0];
                }
            },
            16 << 20) { IsBackground = true };
        var (watch, began) = (Stopwatch.StartNew(), Environment.CpuUsage.TotalTime);
        thread.Start();
        while (!thread.Join(100))
        {
            if (Environment.CpuUsage.TotalTime - began > Counted) _captures.SetValue(null, false);
            if (Environment.CpuUsage.TotalTime - began < most && watch.Elapsed < MostTime) continue;
            _active.SetValue(null, Asleep);
            return ("time", !thread.Join(TimeSpan.FromSeconds(5)));
        }

        return (failure, false);
    }
}
