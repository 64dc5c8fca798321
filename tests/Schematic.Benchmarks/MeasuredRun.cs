using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;

namespace Schematic.Benchmarks;

/// <summary>What one run of a program took, as the operating system counts it: microseconds of processor time, bytes of the peak. Linux only.</summary>
/// <param name="Seconds">User plus system time of the processor.</param>
/// <param name="PeakMB">The most memory that it held at a time; none where it was not asked for.</param>
internal sealed partial record MeasuredRun(double Seconds, double PeakMB)
{
    private const string Clock = "/usr/bin/time";
    private const int WriteOnly = 1;
    private const int ActionsSize = 128; // of posix_spawn_file_actions_t, 80 bytes in glibc
    private const int MicrosecondsASecond = 1_000_000;

    /// <summary>Runs a program to its end, twice: for its time and for its peak. A check that finds errors ends with 1.</summary>
    public static MeasuredRun Of(string program, params IEnumerable<string> arguments) =>
        new(SecondsOf(program, arguments), PeakOf(program, arguments));

    /// <summary>
    /// Processor time of one run. GNU time prints hundredths of a second, too coarse for what takes two of them; so the program is started
    /// here without anything between and the kernel's own figure is read as it ends.
    /// </summary>
    public static unsafe double SecondsOf(string program, params IEnumerable<string> arguments)
    {
        var actions = stackalloc byte[ActionsSize];
        Throw(FileActionsInit(actions));
        foreach (var output in new[] { 1, 2 }) Throw(FileActionsAddOpen(actions, output, "/dev/null", WriteOnly, 0));
        string?[] words = [program, .. arguments, null];
        string?[] surroundings = [.. Environment.GetEnvironmentVariables().Cast<System.Collections.DictionaryEntry>().Select(v => $"{v.Key}={v.Value}"), null];
        var failed = Spawn(out var process, program, actions, 0, words, surroundings);
        Throw(FileActionsDestroy(actions));
        Throw(failed);
        Usage usage;
        int ended;
        while (Wait(process, out ended, 0, &usage) < 0)
        {
            if (Marshal.GetLastPInvokeError() != Interrupted) throw new InvalidOperationException($"{program} could not be waited for");
        }

        // The exit code is the second byte; a signal is in the first.
        if ((ended & 0x7f) != 0 || ended >> 8 > 1) throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"{program} failed: {ended}"));
        return usage.UserSeconds + usage.SystemSeconds + ((usage.UserMicroseconds + usage.SystemMicroseconds) / (double)MicrosecondsASecond);
    }

    /// <summary>
    /// Peak of one run in MB. A program inherits the peak of what starts it, so a small one starts it: GNU time, which must be installed.
    /// </summary>
    public static double PeakOf(string program, params IEnumerable<string> arguments)
    {
        if (!File.Exists(Clock)) throw new InvalidOperationException($"{Clock} is not there; install GNU time.");
        var figures = Path.GetTempFileName();
        try
        {
            Execute(Clock, ["-q", "-o", figures, "-f", "%M", program, .. arguments]);
            return double.Parse(File.ReadAllText(figures), CultureInfo.InvariantCulture) * 1024 / 1e6;
        }
        finally
        {
            File.Delete(figures);
        }
    }

    /// <summary>
    /// Runs another command of this program, started as this one was: where that is <c>dotnet</c> with the program's file, the file comes first.
    /// </summary>
    public static MeasuredRun OfOwn(params IEnumerable<string> arguments) => Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet"
        ? Of(Environment.ProcessPath!, [Path.Combine(AppContext.BaseDirectory, typeof(MeasuredRun).Assembly.GetName().Name + ".dll"), .. arguments])
        : Of(Environment.ProcessPath!, arguments);

    /// <summary>Runs a program to its end and leaves what it says unread, unless it fails.</summary>
    public static void Execute(string program, IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo(program) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode > 1) throw new InvalidOperationException($"{program} failed: {text}{errors.Result}");
    }

    private const int Interrupted = 4; // EINTR

    private static void Throw(int error)
    {
        if (error != 0) throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"a program could not be started: error {error}"));
    }

    [LibraryImport("libc", EntryPoint = "posix_spawn_file_actions_init")]
    private static unsafe partial int FileActionsInit(byte* actions);

    [LibraryImport("libc", EntryPoint = "posix_spawn_file_actions_addopen", StringMarshalling = StringMarshalling.Utf8)]
    private static unsafe partial int FileActionsAddOpen(byte* actions, int file, string path, int flags, uint mode);

    [LibraryImport("libc", EntryPoint = "posix_spawn_file_actions_destroy")]
    private static unsafe partial int FileActionsDestroy(byte* actions);

    [LibraryImport("libc", EntryPoint = "posix_spawn", StringMarshalling = StringMarshalling.Utf8)]
    private static unsafe partial int Spawn(out int process, string path, byte* actions, nint attributes, string?[] arguments, string?[] surroundings);

    [LibraryImport("libc", EntryPoint = "wait4", SetLastError = true)]
    private static unsafe partial int Wait(int process, out int ended, int options, Usage* usage);

    /// <summary>The kernel's <c>struct rusage</c> on 64-bit Linux: two times, and fourteen figures that are not read here.</summary>
    [StructLayout(LayoutKind.Sequential)]
    private unsafe struct Usage
    {
        public long UserSeconds;
        public long UserMicroseconds;
        public long SystemSeconds;
        public long SystemMicroseconds;
        public fixed long Others[14];
    }
}
