using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Schematic.Cli.Watch;

namespace Schematic.Benchmarks;

/// <summary>
/// Saves the main example again and again while its preview is open in a headless Chromium, and times how long it takes from the save
/// until the new preview is made, and until the browser has painted it, which its page says on the console.
/// </summary>
internal static partial class WatchRuns
{
    private const int Saves = 12;
    private const int WarmUp = 4;
    private static readonly string[] Browsers = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    public static int Run(string root)
    {
        var folder = Directory.CreateTempSubdirectory("watch-run-").FullName;
        try
        {
            return RunAsync(root, folder).GetAwaiter().GetResult();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static async Task<int> RunAsync(string root, string folder)
    {
        var text = File.ReadAllText(Path.Combine(root, "examples", "lever-frame", "lever.panel"));
        var path = Path.Combine(folder, "lever.panel");
        await File.WriteAllTextAsync(path, text);
        var board = new PreviewBoard();
        using var end = new CancellationTokenSource();
        var loop = new PreviewLoop(new PreviewMaker(path, false, false), board).Run(_ => { }, end.Token);
        using var server = PreviewServer.Start(board, null)!;
        var painted = new BlockingCollection<int>();
        using var browser = Open(server.Address, folder, painted);
        if (browser is null) Console.WriteLine("No Chromium is here: what is painted is not measured.");
        var preview = (await board.After(0, TimeSpan.FromMinutes(2), default))!;
        Await(browser, painted, preview.Version);
        List<double> made = [], shown = [];
        var spent = TimeSpan.Zero;
        for (var i = 0; i < Saves + WarmUp; i++)
        {
            await Task.Delay(200);
            if (i == WarmUp) spent = Process.GetCurrentProcess().TotalProcessorTime;
            var clock = Stopwatch.StartNew();
            await File.WriteAllTextAsync(path, text.Replace("40 mA green", $"4{i % 9} mA green", StringComparison.Ordinal).Replace("Lever 14 simulator", $"Lever {i} simulator", StringComparison.Ordinal));
            preview = (await board.After(preview.Version, TimeSpan.FromMinutes(2), default))!;
            if (preview.IsStale) Console.WriteLine(preview.Trouble ?? string.Join('\n', preview.Findings.Select(f => f.Message)));
            if (i >= WarmUp) made.Add(clock.Elapsed.TotalMilliseconds);
            Await(browser, painted, preview.Version);
            if (i >= WarmUp) shown.Add(clock.Elapsed.TotalMilliseconds);
        }

        spent = Process.GetCurrentProcess().TotalProcessorTime - spent;
        Print("save to preview made", made);
        if (browser is not null) Print("save to painted", shown);
        Console.WriteLine(string.Format(CultureInfo.InvariantCulture, "processor time of a save, browser left out: {0:0} ms; page of {1} kB", spent.TotalMilliseconds / Saves, preview.Page!.Length / 1000));
        browser?.Kill(entireProcessTree: true);
        await end.CancelAsync();
        await loop;
        return 0;
    }

    private static void Await(Process? browser, BlockingCollection<int> painted, int version)
    {
        while (browser is not null && painted.Take() < version)
        {
            // Of an earlier version.
        }
    }

    private static Process? Open(string address, string folder, BlockingCollection<int> painted)
    {
        if (Browsers.FirstOrDefault(File.Exists) is not { } program) return null;
        var start = new ProcessStartInfo(program, ["--headless=new", "--no-sandbox", "--disable-gpu", "--no-first-run", $"--user-data-dir={Path.Combine(folder, "profile")}", "--enable-logging=stderr", address])
        {
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        };
        var browser = Process.Start(start)!;
        browser.OutputDataReceived += (_, _) => { };
        browser.ErrorDataReceived += (_, line) =>
        {
            if (line.Data is { } said && Painted().Match(said) is { Success: true } match) painted.Add(int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture));
        };
        browser.BeginErrorReadLine();
        browser.BeginOutputReadLine();
        return browser;
    }

    private static void Print(string what, List<double> times)
    {
        times.Sort();
        Console.WriteLine(string.Format(
            CultureInfo.InvariantCulture, "{0,-22} median {1,6:0} ms   95th percentile {2,6:0} ms", what, times[times.Count / 2], times[times.Count * 95 / 100]));
    }

    [GeneratedRegex(@"preview (\d+) painted")]
    private static partial Regex Painted();
}
