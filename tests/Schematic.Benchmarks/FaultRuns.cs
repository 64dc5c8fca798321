using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using Schematic.Cli.Files;
using Schematic.Language;

namespace Schematic.Benchmarks;

/// <summary>
/// <c>faults [KILLS] [SEED] [FOLDER]</c>: takes the processor and the disk away from the program in the middle of its work. <c>draw</c> and
/// <c>format --write</c> are killed (<c>kill -9</c>): a third at any moment, a third from the first temporary file on, a third as a file is
/// put in place (where <c>strace</c> is there). Each file left is whole, of before or of now, a folder of both has no
/// list that vouches for it, and the next run leaves nothing behind. Then the disk is full at each write in turn, and what is printed
/// goes to a full one. Only a system with <c>/dev/full</c> and the right to mount has all of it; what is left out is said.
/// </summary>
internal sealed class FaultRuns : IDisposable
{
    private const int Page = 4096, Told = 10, TimedRuns = 5;
    private const string Tracer = "/usr/bin/strace";
    private static readonly string[] Formats = ["--format", "svg,pdf"];

    private readonly string _folder = Directory.CreateTempSubdirectory("schematic-faults-").FullName;
    private readonly string _program;
    private readonly Random _random;
    private readonly string _before;
    private readonly string _now;
    private int _failures;

    /// <summary>With the native program of a folder, or one made now: it starts in a fiftieth of a second, so that a kill mostly meets its work.</summary>
    private FaultRuns(string root, int seed, string? made)
    {
        _program = made is null ? ColdStart.PublishNative(root, Path.Combine(_folder, "native")) : Path.Combine(made, "Schematic.Cli");
        _random = new Random(seed);
        _now = File.ReadAllText(Path.Combine(root, "examples", "signal-lamp", "signal-lamp.panel"));
        _before = _now.Replace("revision A", "revision Z", StringComparison.Ordinal);
        if (_before == _now) throw new InvalidOperationException("the example no longer has a revision A to tell the packs apart");
    }

    private string Panel => Path.Combine(_folder, "unit.panel");

    /// <summary>Runs the command; the exit code is 1 when anything was not as it should be.</summary>
    public static int Run(string root, string[] args)
    {
        int Number(int place, int usual) => args.Length > place ? int.Parse(args[place], CultureInfo.InvariantCulture) : usual;
        using var runs = new FaultRuns(root, Number(1, 1), args.ElementAtOrDefault(2));
        runs.KillDraw(Number(0, 200));
        runs.KillFormat(Number(0, 200));
        runs.FullDisk();
        runs.FullOutput();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{runs._failures} failures"));
        return runs._failures == 0 ? 0 : 1;
    }

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private void KillDraw(int kills)
    {
        var (old, fresh) = (Drawn(_before), Drawn(_now));
        var (ended, none, some, all, left) = (0, 0, 0, 0, 0);
        var output = Path.Combine(_folder, "out");
        var (span, writing) = Timed(() => Directory.EnumerateFiles(output, "*" + AtomicFiles.TemporaryEnding).Any(), ["draw", Panel, "--out", output, .. Formats], () => Fill(output, old));
        for (var (i, killed) = (0, 0); killed < kills; i++)
        {
            Fill(output, old);
            File.WriteAllText(Panel, _now);
            string[] arguments = ["draw", Panel, "--out", output, .. Formats];
            var isKilled = i % 3 == 2 && File.Exists(Tracer) ? KilledAtRename(1 + _random.Next(fresh.Count), arguments) : Killed(
                i % 3 == 0 ? () => true : () => Directory.EnumerateFiles(output, "*" + AtomicFiles.TemporaryEnding).Any(),
                (i % 3 == 0 ? span : writing) * _random.NextDouble(), arguments);
            if (isKilled) Tell("draw", ++killed);
            else ended++;
            var found = Files(output);
            var parts = found.Keys.Count(IsPart);
            if (parts > 0) left++;
            var whole = found.Where(f => !IsPart(f.Key)).ToList();
            foreach (var (name, bytes) in whole)
            {
                if (!Same(old, name, bytes) && !Same(fresh, name, bytes)) Fail($"draw, kill {i}: '{name}' is half");
            }

            var changed = whole.Count(f => !Same(old, f.Key, f.Value));
            if (changed == 0) none++;
            else if (old.Keys.Union(fresh.Keys).All(n => found.TryGetValue(n, out var bytes) && Same(fresh, n, bytes))) all++;
            else some++;
            if (found.Keys.Any(IsList) && !Agree(found)) Fail($"draw, kill {i}: the list vouches for sheets that it does not name");
            if (parts == 0 && changed == 0 && i % 10 > 0) continue; // Nothing was begun: the next run is the first.
            if (Ended("draw", arguments[1..]).Code != 0) Fail($"draw, kill {i}: the next run fails");
            if (!Alike(Files(output), fresh)) Fail($"draw, kill {i}: the next run leaves {string.Join(", ", Files(output).Keys.Except(fresh.Keys))}");
        }

        Say($"draw killed {kills} times within {span.TotalSeconds:0.0} s: {none} packs as before, {some} in between and without a list, {all} finished but for their end; {ended} more runs had ended before they were killed, each looked at as well; {left} left temporary files, all cleared by the next run");
    }

    private void KillFormat(int kills)
    {
        var untidy = _now.Replace("\n", "  \n", StringComparison.Ordinal);
        var tidy = PanelFormatter.Format(untidy);
        var folder = Directory.CreateDirectory(Path.Combine(_folder, "format")).FullName;
        var file = Path.Combine(folder, "unit.panel");
        File.WriteAllText(file, untidy);
        string[] arguments = ["format", file, "--write"];
        bool Writes() => Directory.EnumerateFiles(folder).Count() > 1;
        var (span, writing) = Timed(Writes, arguments, () => File.WriteAllText(file, untidy));
        var (before, after, left, ended) = (0, 0, 0, 0);
        for (var (i, killed) = (0, 0); killed < kills; i++)
        {
            File.WriteAllText(file, untidy);
            var isKilled = i % 3 == 2 && File.Exists(Tracer) ? KilledAtRename(1, arguments) : Killed(i % 3 == 0 ? () => true : Writes, (i % 3 == 0 ? span : writing) * _random.NextDouble(), arguments);
            if (isKilled) Tell("format", ++killed);
            else ended++;
            var text = File.ReadAllText(file);
            if (text == untidy) before++;
            else if (text == tidy) after++;
            else Fail($"format, kill {i}: the file is half");
            if (Directory.EnumerateFiles(folder).Count() > 1) left++;
            if (Ended("format", [file, "--write"]).Code != 0 || File.ReadAllText(file) != tidy) Fail($"format, kill {i}: the next run fails");
            if (Directory.EnumerateFiles(folder).Count() != 1) Fail($"format, kill {i}: the next run leaves something behind");
        }

        Say($"format --write killed {kills} times within {span.TotalSeconds:0.0} s: {before} files as before, {after} rewritten, {ended} of these by runs that had ended before they were killed; {left} left a temporary file, all cleared by the next run");
    }

    /// <summary>How long a run takes, and how long from its first temporary file on: the shortest of a few, for a run on a busy machine takes any time.</summary>
    private (TimeSpan Whole, TimeSpan Writing) Timed(Func<bool> writes, string[] arguments, Action prepare)
    {
        List<(TimeSpan Whole, TimeSpan Writing)> runs = [];
        for (var run = 0; run < TimedRuns; run++)
        {
            prepare();
            runs.Add(TimedOnce(writes, arguments));
        }

        return (runs.Min(r => r.Whole), runs.Min(r => r.Writing));
    }

    private (TimeSpan Whole, TimeSpan Writing) TimedOnce(Func<bool> writes, string[] arguments)
    {
        var watch = Stopwatch.StartNew();
        TimeSpan? from = null;
        using var process = Start(_program, arguments);
        while (!process.HasExited)
        {
            if (from is null && writes()) from = watch.Elapsed;
            Thread.Yield();
        }

        return (watch.Elapsed, watch.Elapsed - (from ?? watch.Elapsed));
    }

    private void FullDisk()
    {
        var disk = Directory.CreateDirectory(Path.Combine(_folder, "disk")).FullName;
        var (old, fresh) = (Drawn(_before), Drawn(_now));
        var waiting = fresh.Where(f => !Same(old, f.Key, f.Value)).OrderBy(f => (IsList(f.Key), !f.Key.EndsWith(".svg", StringComparison.Ordinal))).ToList();
        var room = old.Values.Sum(Blocks);
        var (tried, stopped) = (0, 0);
        var used = room;
        File.WriteAllText(Panel, _now);
        foreach (var (name, bytes) in waiting)
        {
            // Nothing of this file fits, and all of it but its last page.
            foreach (var more in new[] { 0, Blocks(bytes) - Page }.Distinct())
            {
                if (!Mount(disk, used + more))
                {
                    Say($"a disk that is full: left out, a small one cannot be mounted here");
                    return;
                }

                try
                {
                    var output = Path.Combine(disk, "out");
                    Fill(output, old);
                    var (code, said, _) = Ended("draw", [Panel, "--out", output, .. Formats]);
                    tried++;
                    if (code == 2 && said.Contains("full", StringComparison.Ordinal)) stopped++;
                    else Fail($"disk full at '{name}' (+{more}): exit code {code}, '{said.Trim()}'");
                    if (!Alike(Files(output), old)) Fail($"disk full at '{name}' (+{more}): the pack of before is no longer what it was");
                }
                finally
                {
                    MeasuredRun.Execute("umount", [disk]);
                }
            }

            used += Blocks(bytes);
        }

        tried++;
        if (FullFormat(disk)) stopped++;
        Say($"disk full at {tried} places of draw and format --write: {stopped} told in one sentence with exit code 2, the files of before whole, nothing left beside them");
    }

    private bool FullFormat(string disk)
    {
        var untidy = _now.Replace("\n", "  \n", StringComparison.Ordinal);
        var bytes = Encoding.UTF8.GetBytes(untidy);
        Mount(disk, Blocks(bytes));
        try
        {
            var file = Path.Combine(disk, "unit.panel");
            File.WriteAllBytes(file, bytes);
            var (code, said, _) = Ended("format", [file, "--write"]);
            var isWell = code == 2 && said.Contains("full", StringComparison.Ordinal) && File.ReadAllText(file) == untidy && Directory.EnumerateFiles(disk).Count() == 1;
            if (!isWell) Fail($"disk full at format --write: exit code {code}, '{said.Trim()}'");
            return isWell;
        }
        finally
        {
            MeasuredRun.Execute("umount", [disk]);
        }
    }

    private void FullOutput()
    {
        if (!File.Exists("/dev/full"))
        {
            Say($"output to a full disk: left out, there is no /dev/full");
            return;
        }

        File.WriteAllText(Panel, _now);
        string[] commands = ["check", "format", "chart", "wires", "work", "load", "parts", "assumed", "signals", "ring-out"];
        var told = 0;
        foreach (var command in commands)
        {
            var (code, said, _) = EndedBy("sh", ["-c", $"exec '{_program}' {command} '{Panel}' > /dev/full"]);
            var prints = Ended(command, [Panel]).Printed.Length > 0;
            if (code == (prints ? 2 : 0) && !said.Contains("   at ", StringComparison.Ordinal)) told++;
            else Fail($"{command} to a full disk: exit code {code}, '{said.Trim()}'");
        }

        Say($"{commands.Length} commands that print to a full disk: {told} end with exit code 2 and without a stack of calls");
    }

    /// <summary>The pack of a panel, drawn in peace.</summary>
    private ImmutableSortedDictionary<string, byte[]> Drawn(string text)
    {
        var output = Path.Combine(_folder, "whole");
        if (Directory.Exists(output)) Directory.Delete(output, recursive: true);
        File.WriteAllText(Panel, text);
        if (Ended("draw", [Panel, "--out", output, .. Formats]) is { Code: not 0 } failed) throw new InvalidOperationException(failed.Said);
        return Files(output);
    }

    private static void Fill(string folder, ImmutableSortedDictionary<string, byte[]> files)
    {
        if (Directory.Exists(folder)) Directory.Delete(folder, recursive: true);
        Directory.CreateDirectory(folder);
        foreach (var (name, bytes) in files) File.WriteAllBytes(Path.Combine(folder, name), bytes);
    }

    private static ImmutableSortedDictionary<string, byte[]> Files(string folder) =>
        Directory.EnumerateFiles(folder).ToImmutableSortedDictionary(p => Path.GetFileName(p), File.ReadAllBytes, StringComparer.Ordinal);

    private static bool Same(ImmutableSortedDictionary<string, byte[]> pack, string name, byte[] bytes) => pack.TryGetValue(name, out var whole) && whole.AsSpan().SequenceEqual(bytes);

    private static bool Alike(ImmutableSortedDictionary<string, byte[]> one, ImmutableSortedDictionary<string, byte[]> other) =>
        one.Count == other.Count && one.All(f => Same(other, f.Key, f.Value));

    private static bool IsPart(string name) => name.EndsWith(AtomicFiles.TemporaryEnding, StringComparison.Ordinal);

    private static bool IsList(string name) => name.EndsWith(PackManifest.Ending, StringComparison.Ordinal);

    /// <summary>Whether every file that the list names is there with the check sum that it says.</summary>
    private static bool Agree(ImmutableSortedDictionary<string, byte[]> files)
    {
        var lines = Encoding.UTF8.GetString(files[files.Keys.Single(IsList)]).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return lines.All(l => files.TryGetValue(l[66..], out var bytes) && Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes)) == l[..64]);
    }

    private static int Blocks(byte[] bytes) => (bytes.Length + Page - 1) / Page * Page;

    private static bool Mount(string folder, int bytes)
    {
        try
        {
            return EndedBy("mount", ["-t", "tmpfs", "-o", string.Create(CultureInfo.InvariantCulture, $"size={bytes}"), "tmpfs", folder]).Code == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    /// <summary>Runs the program and kills it so long after something began. Whether it was killed before it had ended.</summary>
    private bool Killed(Func<bool> begins, TimeSpan wait, string[] arguments)
    {
        using var process = Start(_program, arguments);
        Stopwatch? since = null;
        while (!process.HasExited)
        {
            if (since is null && begins()) since = Stopwatch.StartNew();
            if (since is not null && since.Elapsed >= wait) break;
            Thread.Yield(); // A file is put in place within a millisecond: no longer sleep would meet that moment.
        }

        var isKilled = !process.HasExited;
        process.Kill();
        process.WaitForExit();
        return isKilled;
    }

    /// <summary>Runs the program and has the system kill it as it puts its so-manieth file in place: a moment that no clock meets.</summary>
    private bool KilledAtRename(int number, string[] arguments)
    {
        var killed = EndedBy(Tracer, ["-f", "-qq", "--seccomp-bpf", "-o", "/dev/null", "-e", "trace=rename,renameat,renameat2", "-e",
            string.Create(CultureInfo.InvariantCulture, $"inject=rename,renameat,renameat2:signal=SIGKILL:when={number}"), _program, .. arguments]);
        return killed.Code == 128 + 9;
    }

    private EndedRun Ended(string command, IEnumerable<string> arguments) => EndedBy(_program, [command, .. arguments]);

    private static EndedRun EndedBy(string program, IEnumerable<string> arguments)
    {
        using var process = Start(program, arguments);
        var printed = process.StandardOutput.ReadToEndAsync();
        var said = process.StandardError.ReadToEnd();
        process.WaitForExit();
        return new EndedRun(process.ExitCode, said, printed.Result);
    }

    private static Process Start(string program, IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo(program) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        return Process.Start(start)!;
    }

    private void Fail(string what)
    {
        _failures++;
        Console.WriteLine("FAILED " + what);
    }

    /// <summary>So that a run that is stopped has told how far it came.</summary>
    private void Tell(string command, int kills)
    {
        if (kills > 0 && kills % Told == 0) Say($"{command}: {kills} kills so far, {_failures} failures");
    }

    private static void Say(FormattableString text) => Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}

/// <summary>What a program did.</summary>
/// <param name="Code">Its exit code.</param>
/// <param name="Said">What it told on standard error.</param>
/// <param name="Printed">What it printed on standard output.</param>
internal sealed record EndedRun(int Code, string Said, string Printed);
