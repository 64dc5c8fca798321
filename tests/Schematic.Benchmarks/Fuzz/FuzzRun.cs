using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Schematic.Benchmarks.Fuzz;

/// <summary>
/// <c>fuzz [minutes] [first seed]</c>: mutants of everything the project shows, one after the other, each from its number alone. Prints
/// the number of each failure with the text beside it; <c>fuzz one SEED</c> runs that again, <c>fuzz file PATH</c> a text that was kept.
/// Every input is read, checked and formatted; every fourth panel is printed, read again after the formatter and listed, every two hundred and fiftieth
/// drawn, for one drawing costs as much as a hundred readings.
/// </summary>
internal sealed class FuzzRun
{
    private const int DrawEvery = 250;
    private const int ThoroughEvery = 4;
    private const int KindsEvery = 11;
    private const int ConversationEvery = 10;
    private static readonly TimeSpan Tell = TimeSpan.FromMinutes(5);
    private static readonly TimeSpan Slow = TimeSpan.FromSeconds(20);
    private static readonly TimeSpan Hung = TimeSpan.FromMinutes(4);

    private readonly FuzzCorpus _corpus = new(RepositoryRoot.Find());
    private readonly FuzzMutator _mutator;
    private readonly FuzzChecks _checks;
    private readonly FuzzEditor _editor;
    private readonly FuzzConversation _conversation;
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "schematic-fuzz");
    private readonly SortedDictionary<string, (int Times, TimeSpan Spent)> _stages = new(StringComparer.Ordinal);
    private volatile string _at = "";

    private FuzzRun()
    {
        _mutator = new FuzzMutator(_corpus);
        _checks = new FuzzChecks(_corpus);
        _editor = new FuzzEditor(_corpus, RepositoryRoot.Find());
        _conversation = new FuzzConversation(_corpus);
    }

    /// <summary>Runs the command; the exit code is 1 when anything failed.</summary>
    public static int Run(string[] args)
    {
        int Number(int place, int usual) => args.Length > place ? int.Parse(args[place], CultureInfo.InvariantCulture) : usual;
        return args switch
        {
            ["one", ..] => new FuzzRun().Run(TimeSpan.MaxValue, Number(1, 1), 1),
            ["file", var path] => new FuzzRun().RunFile(path),
            _ => new FuzzRun().Run(TimeSpan.FromMinutes(Number(0, 1)), Number(1, 1), int.MaxValue),
        };
    }

    private int Run(TimeSpan time, int first, int most)
    {
        Directory.CreateDirectory(_folder);
        var watch = Stopwatch.StartNew();
        var told = TimeSpan.Zero;
        var tried = 0;
        var failures = 0;
        for (; tried < most && watch.Elapsed < time; tried++)
        {
            if (watch.Elapsed - told > Tell)
            {
                told = watch.Elapsed;
                Print(tried, failures, told);
            }

            if (Try(first + tried) is not { } failure) continue;
            failures++;
            Console.WriteLine($"seed {first + tried}: {failure}");
        }

        Print(tried, failures, watch.Elapsed);
        foreach (var (stage, (times, spent)) in _stages.OrderByDescending(s => s.Value.Spent))
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {stage,-28} {times,9:n0} times {spent.TotalSeconds,8:0.0} s of processor time, {spent.TotalMilliseconds / Math.Max(1, times):0.00} ms each"));
        return failures == 0 ? 0 : 1;
    }

    /// <summary>A text that was kept, through everything, drawn as well.</summary>
    private int RunFile(string path)
    {
        var failure = Judge(new FuzzText("kept.panel", File.ReadAllText(path)), FuzzKind.Panel, 0);
        Console.WriteLine(failure ?? "nothing is wrong");
        return failure is null ? 0 : 1;
    }

    private void Print(int tried, int failures, TimeSpan time) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"{tried:n0} inputs, {tried / time.TotalSeconds:0} a second, {tried / Environment.CpuUsage.TotalTime.TotalSeconds:0} a second of processor time, {failures} failures; {_checks.Sheets:n0} sheets, {_checks.SheetsWithFaults} of them told as not drawn as they should be"));

    /// <summary>What a number makes: most make a panel.</summary>
    private FuzzKind KindOf(int seed) => (seed % KindsEvery) switch
    {
        0 when !_corpus.Readings.IsEmpty => FuzzKind.Readings,
        1 => seed / KindsEvery % ConversationEvery == 0 ? FuzzKind.Conversation : FuzzKind.Editor,
        _ => FuzzKind.Panel,
    };

    /// <summary>One mutant; what is wrong with it, or null. A stage that does not end is told and ends the program: its thread cannot be stopped.</summary>
    private string? Try(int seed)
    {
        var kind = KindOf(seed);
        var text = _mutator.Mutate(kind == FuzzKind.Readings ? _corpus.Readings : _corpus.Panels, seed);
        string? failure = null;
        var worker = new Thread(() => failure = Judge(text, kind, seed), 64 << 20);
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

    private string? Judge(FuzzText text, FuzzKind kind, int seed)
    {
        var began = Environment.CpuUsage.TotalTime;
        var slowest = (Stage: "", Time: TimeSpan.Zero);
        void Step(string stage)
        {
            var now = Environment.CpuUsage.TotalTime;
            if (_at.Length > 0)
            {
                var (times, spent) = _stages.GetValueOrDefault(_at);
                _stages[_at] = (times + 1, spent + now - began);
            }

            if (now - began > slowest.Time) slowest = (_at, now - began);
            (began, _at) = (now, stage);
        }

        try
        {
            _at = "";
            switch (kind)
            {
                case FuzzKind.Readings: FuzzChecks.Readings(text, Beside(seed), Step); break;
                case FuzzKind.Editor: _editor.Run(text, seed, Step); break;
                case FuzzKind.Conversation: _conversation.Run(text, seed, Step); break;
                case FuzzKind.Panel: _checks.Panel(text, seed % ThoroughEvery == 0, seed % DrawEvery == 0, Step); break;
            }

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
        File.WriteAllText(Path.Combine(_folder, string.Create(CultureInfo.InvariantCulture, $"{seed}.panel")), text.Text, Encoding.UTF8); // halves of characters are lost; the number brings them back
}

/// <summary>What a mutant is run through.</summary>
internal enum FuzzKind
{
    /// <summary>A panel: reading, checking, printing, the formatter, lists, drawing.</summary>
    Panel,

    /// <summary>A readings file.</summary>
    Readings,

    /// <summary>A panel in the language server's seam.</summary>
    Editor,

    /// <summary>Messages of the protocol.</summary>
    Conversation,
}
