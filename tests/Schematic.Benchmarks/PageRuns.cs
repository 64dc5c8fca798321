using System.Diagnostics;
using System.Text;
using Microsoft.Playwright;
using Schematic.Binding;
using Schematic.Page;

namespace Schematic.Benchmarks;

/// <summary>
/// Writes the page of each example, and opens it in a browser: how large it is, how long it takes to write, and how long from the
/// beginning of loading until it is painted and can be operated (the page marks that moment itself).
/// </summary>
internal static class PageRuns
{
    private const int Openings = 5;

    private static readonly string[] Examples = ["lever-frame/lever", "relay-latch/latch", "engine-order/engine-order", "dsub-breakout/breakout"];

    public static int Run(string root)
    {
        var folder = Directory.CreateTempSubdirectory("schematic-page-");
        try
        {
            RunIn(root, folder.FullName).GetAwaiter().GetResult();
            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task RunIn(string root, string folder)
    {
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = Environment.GetEnvironmentVariable("CHROMIUM") ?? "/usr/bin/chromium", Args = ["--no-sandbox"] });
        Write(root, Examples[0], folder); // The first one pays for the compiler at run time.
        foreach (var example in Examples)
        {
            var watch = Stopwatch.StartNew();
            var (file, size) = Write(root, example, folder);
            var written = watch.ElapsedMilliseconds;
            var times = new List<double>();
            for (var i = 0; i < Openings; i++) times.Add(await Open(browser, file));
            times.Sort();
            Console.WriteLine($"{example,-28} {size / 1000.0,6:0} kB, written in {written,5} ms, operable after {times[Openings / 2],5:0} ms (best {times[0]:0} ms)");
        }
    }

    private static (string File, int Size) Write(string root, string example, string folder)
    {
        var panel = PanelLoader.LoadFile(Path.Combine(root, "examples", example + ".panel")).Panel;
        var bytes = Encoding.UTF8.GetBytes(PanelPage.Write(new PageRequest(panel, []) { FileName = Path.GetFileName(example) + ".panel" }));
        var file = Path.Combine(folder, Path.GetFileName(example) + ".html");
        File.WriteAllBytes(file, bytes);
        return (file, bytes.Length);
    }

    private static async Task<double> Open(IBrowser browser, string file)
    {
        await using var context = await browser.NewContextAsync();
        var page = await context.NewPageAsync();
        await page.GotoAsync("file://" + file);
        return await page.EvaluateAsync<double>("""
            () => new Promise(done => {
              const look = () => performance.getEntriesByName('operable').length > 0 ? done(performance.getEntriesByName('operable')[0].startTime) : setTimeout(look, 5);
              look();
            })
            """);
    }
}
