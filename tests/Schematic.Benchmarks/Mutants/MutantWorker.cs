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

    private readonly List<MutantCase> _cases;
    private readonly FieldInfo _active;
    private readonly FieldInfo _captures;
    private readonly MethodInfo _reset;
    private readonly MethodInfo _covered;
    private readonly Dictionary<int, List<int>> _coveredBy = [];
    private readonly HashSet<int> _early = [];
    private readonly TimeSpan[] _took;

    private MutantWorker(string folder, string[] filter)
    {
        var (tests, library) = MutantCase.Load(folder);
        var control = library.GetTypes().Single(t => t.Name == "MutantControl");
        FieldInfo Field(string name) => control.GetField(name, BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic) ?? throw new MissingFieldException(control.FullName, name);
        MethodInfo Method(string name) => control.GetMethod(name, BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic) ?? throw new MissingMethodException(control.FullName, name);
        (_active, _captures, _reset, _covered) = (Field("ActiveMutant"), Field("CaptureCoverage"), Method("ResetCoverage"), Method("GetCoverageData"));
        _cases = MutantCase.Of(tests, filter);
        _took = new TimeSpan[_cases.Count];
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

    private void Learn()
    {
        _active.SetValue(null, Asleep);
        _captures.SetValue(null, true);
        var failing = new HashSet<int>();
        for (var pass = 0; pass < 2; pass++)
        {
            for (var i = 0; i < _cases.Count; i++)
            {
                if (failing.Contains(i)) continue;
                _reset.Invoke(null, null);
                var began = Environment.CpuUsage.TotalTime;
                if (Try(i, MostTime).Failure is { } failure)
                {
                    failing.Add(i);
                    Console.WriteLine($"! {_cases[i].Name} fails unchanged: {failure}");
                    continue;
                }

                _took[i] = Environment.CpuUsage.TotalTime - began;
                var data = (IEnumerable[])_covered.Invoke(null, null)!;
                if (pass == 1 || data[1].Cast<int>().Any()) _early.UnionWith(data[1].Cast<int>());
                if (pass == 1) continue;
                foreach (var number in data[0].Cast<int>().Distinct())
                {
                    if (!_coveredBy.TryGetValue(number, out var by)) _coveredBy[number] = by = [];
                    by.Add(i);
                }
            }
        }

        _captures.SetValue(null, false);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"! {_cases.Count} tests, {failing.Count} fail; {_took.Sum(t => t.TotalSeconds):0.0} s of processor time, the longest {(_cases.Count == 0 ? "" : _cases[Array.IndexOf(_took, _took.Max())].Name)} {_took.Max().TotalSeconds:0.0} s"));
    }

    private (string Fate, bool IsStuck) FateOf(int number)
    {
        var isEarly = _early.Contains(number);
        if (!_coveredBy.TryGetValue(number, out var by)) return (isEarly ? "early" : "uncovered", false);
        _active.SetValue(null, number);
        try
        {
            foreach (var i in by.OrderBy(i => _took[i]))
            {
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
            if (Environment.CpuUsage.TotalTime - began < most && watch.Elapsed < MostTime) continue;
            _active.SetValue(null, Asleep);
            return ("time", !thread.Join(TimeSpan.FromSeconds(5)));
        }

        return (failure, false);
    }
}
