using System.Diagnostics;
using System.Globalization;
using System.IO.Pipelines;
using System.Text;
using System.Text.Json;
using Schematic.Cli.LanguageServer;

namespace Schematic.Benchmarks;

/// <summary>
/// Types into a panel of 2,000 lines over the protocol, and times how long the findings of each key take, and a completion beside
/// it: from the first byte sent to the last byte of the answer, JSON included.
/// </summary>
internal static class EditorRuns
{
    private const string Uri = "file:///bench/typed.panel";
    private const int Lines = 2_000;
    private const int Keys = 400;
    private const int WarmUp = 60;

    public static int Run() => RunAsync().GetAwaiter().GetResult();

    private static async Task<int> RunAsync()
    {
        Pipe requests = new(), answers = new();
        _ = LanguageConnection.Run(requests.Reader.AsStream(), answers.Writer.AsStream(), TimeSpan.FromMinutes(10));
        var reader = answers.Reader.AsStream();
        var text = Text();
        await Send(requests.Writer, "textDocument/didOpen", null, new { textDocument = new { uri = Uri, languageId = "panel", version = 1, text } });
        await Read(reader);
        List<double> keys = [], words = [];
        var before = TimeSpan.Zero;
        const string typed = "lamp DS9001 24 V 40 mA { J1:1 J1:2 }\n";
        for (var i = 0; i < Keys + WarmUp; i++)
        {
            var (line, column) = (100 + (i / typed.Length * 150 % (Lines - 200)), i % typed.Length);
            if (i == WarmUp) before = Process.GetCurrentProcess().TotalProcessorTime;
            var clock = Stopwatch.StartNew();
            var at = new { line, character = column };
            await Send(requests.Writer, "textDocument/didChange", null, new
            {
                textDocument = new { uri = Uri, version = i + 2 },
                contentChanges = new[] { new { range = new { start = at, end = at }, text = typed[column].ToString() } },
            });
            await Read(reader);
            if (i >= WarmUp) keys.Add(clock.Elapsed.TotalMilliseconds);
            clock.Restart();
            await Send(requests.Writer, "textDocument/completion", i + 1, new { textDocument = new { uri = Uri }, position = new { line, character = column + 1 } });
            await Read(reader);
            if (i >= WarmUp) words.Add(clock.Elapsed.TotalMilliseconds);
        }

        Console.WriteLine($"{text.Count(c => c == '\n')} lines, {text.Length / 1000} kB");
        Print("findings after a key", keys);
        Print("completion", words);
        var spent = Process.GetCurrentProcess().TotalProcessorTime - before;
        Console.WriteLine(string.Format(CultureInfo.InvariantCulture, "processor time of a key and a completion: {0:0.0} ms", spent.TotalMilliseconds / Keys));
        return 0;
    }

    private static void Print(string what, List<double> times)
    {
        times.Sort();
        Console.WriteLine(string.Format(
            CultureInfo.InvariantCulture, "{0,-22} median {1,6:0.0} ms   95th percentile {2,6:0.0} ms   slowest {3,6:0.0} ms",
            what, times[times.Count / 2], times[times.Count * 95 / 100], times[^1]));
    }

    private static async Task Send(PipeWriter writer, string method, int? id, object parameters)
    {
        var body = JsonSerializer.SerializeToUtf8Bytes(new Dictionary<string, object?> { ["jsonrpc"] = "2.0", ["method"] = method, ["params"] = parameters, ["id"] = id }
            .Where(p => p.Value is not null).ToDictionary());
        await writer.WriteAsync(Encoding.ASCII.GetBytes($"Content-Length: {body.Length}\r\n\r\n"));
        await writer.WriteAsync(body);
    }

    private static async Task Read(Stream stream)
    {
        var header = new StringBuilder();
        var letter = new byte[1];
        while (header.Length < 4 || header.ToString(header.Length - 4, 4) != "\r\n\r\n")
        {
            await stream.ReadExactlyAsync(letter);
            header.Append((char)letter[0]);
        }

        var length = int.Parse(header.ToString().Split("Content-Length: ")[1].Split('\r')[0], CultureInfo.InvariantCulture);
        await stream.ReadExactlyAsync(new byte[length]);
    }

    /// <summary>A unit of many lamps and switches, its plug and its harness, an expectation for each lamp.</summary>
    private static string Text()
    {
        const int count = Lines / 5;
        var text = new StringBuilder("""
            title "Long frame" number LF-900
            connector J1 "frame unit" { pins ; solder ; grid 80 by 20 by-rows on front of pins }
            connector P1 "frame plug" { sockets ; solder ; mates J1 }
            supply PS1 24 V limit 100 A { + - }

            """);
        for (var i = 1; i <= count; i++)
        {
            var at = 4 * (i - 1);
            text.Append(CultureInfo.InvariantCulture, $"actuator A{i} \"lever {i}\" {{ normal rest ; reverse }}\n");
            text.Append(CultureInfo.InvariantCulture, $"switch S{i} make on A{i} when reverse {{ J1:{at + 1} J1:{at + 2} }}\n");
            text.Append(CultureInfo.InvariantCulture, $"lamp DS{i} \"lever {i} reversed\" 24 V 40 mA green {{ J1:{at + 2} J1:{at + 3} }}\n");
            text.Append(CultureInfo.InvariantCulture, $"wire W{(2 * i) - 1} 22 AWG red 450 mm PS1:+ -> P1:{at + 1}\n");
            text.Append(CultureInfo.InvariantCulture, $"wire W{2 * i} 22 AWG black 450 mm PS1:- -> P1:{at + 3}   # return of {i}\n");
        }

        return text.ToString();
    }
}
