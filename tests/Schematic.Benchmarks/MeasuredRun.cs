using System.Diagnostics;
using System.Globalization;

namespace Schematic.Benchmarks;

/// <summary>What one run of a program took, as the operating system counts it: GNU time is asked, so it must be installed.</summary>
/// <param name="Seconds">User plus system time of the processor.</param>
/// <param name="PeakMB">The most memory that it held at a time.</param>
internal sealed record MeasuredRun(double Seconds, double PeakMB)
{
    private const string Clock = "/usr/bin/time";

    /// <summary>Runs a program to its end; a check that finds errors ends with 1.</summary>
    public static MeasuredRun Of(string program, params IEnumerable<string> arguments)
    {
        if (!File.Exists(Clock)) throw new InvalidOperationException($"{Clock} is not there; install GNU time.");
        var figures = Path.GetTempFileName();
        try
        {
            Execute(Clock, ["-q", "-o", figures, "-f", "%U %S %M", program, .. arguments]);
            var words = File.ReadAllText(figures).Split(' ').Select(w => double.Parse(w, CultureInfo.InvariantCulture)).ToArray();
            return new MeasuredRun(words[0] + words[1], words[2] * 1024 / 1e6);
        }
        finally
        {
            File.Delete(figures);
        }
    }

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
}
