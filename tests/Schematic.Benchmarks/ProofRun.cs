using System.Diagnostics;
using System.Globalization;
using System.Text;
using Schematic.Analysis;
using Schematic.Binding;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Benchmarks;

/// <summary>
/// Times the proof in every position on panels of 40 two-position actuators and 10 relays, from a cold process: what a person
/// waits for. Prints time, memory at its peak and the findings.
/// </summary>
internal static class ProofRun
{
    private const int Relays = 10;

    /// <summary>
    /// Proves one of the panels: <c>chain</c> (the default), <c>deep</c> or <c>ring</c> of latches, or a panel of
    /// <see cref="GrowthPanels"/> with its size; <c>all</c> lists those.
    /// </summary>
    public static int Run(string[] which) => which switch
    {
        [] => Prove("chain", TextOf("chain")),
        ["all"] => List(),
        [var name, var size] => Prove($"{name} {size}", GrowthPanels.TextOf(name, int.Parse(size, CultureInfo.InvariantCulture))),
        [var name, ..] => Prove(name, TextOf(name)),
    };

    private static int List()
    {
        foreach (var (name, size) in GrowthPanels.All) Console.WriteLine($"proof {name} {size}");
        return 0;
    }

    private static int Prove(string which, string text)
    {
        var panel = PanelLoader.Load(new SourceText("proof.panel", text), MemoryPanelFiles.None);
        foreach (var finding in panel.Diagnostics) Console.WriteLine($"{finding.Span} {finding.Message}");
        var before = Process.GetCurrentProcess().TotalProcessorTime;
        var clock = Stopwatch.StartNew();
        var context = new AnalysisContext(panel.Panel);
        var findings = PanelChecker.AllChecks.Where(c => c.Stage == CheckStage.Positions).SelectMany(c => c.Run(context)).ToList();
        clock.Stop();
        Console.WriteLine(string.Format(
            CultureInfo.InvariantCulture,
            "{0}: {1} actuators, {2} relays: {3:0} ms ({4:0} ms of processor time), {5:0} MB at the peak of the process, {6} nodes, {7} findings",
            which, panel.Panel.Actuators.Length, panel.Panel.Parts.OfType<Relay>().Count(), clock.Elapsed.TotalMilliseconds,
            (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds,
            Process.GetCurrentProcess().PeakWorkingSet64 / 1e6, context.Positions.Circuit.Store.NodeCount, findings.Count));
        foreach (var finding in findings) Console.WriteLine($"{finding.Rule}: {finding.Message} ({finding.Trace.Length} lines of trace)");
        return 0;
    }

    /// <summary>
    /// Ten latches, each started by two of its four actuators and released by a third; the fourth switches its lamp. In the
    /// chain a latch can start only while the one before it stands; in the ring the first waits for the last as well, so that
    /// no latch ever starts. The deep panel states that the last lamp never lights: refuting it takes every actuator.
    /// </summary>
    private static string TextOf(string which)
    {
        var text = new StringBuilder("supply PS1 24 V { + - }\nboard B1 { inputs IN1..IN40 max 5.5 V pull-up 5 V 10 kohm ; ground GND }\n");
        List<string> feed = ["PS1:+"], back = ["PS1:-", "B1:GND"];
        for (var i = 1; i <= 4 * Relays; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"actuator A{i} {{ off rest ; on }}\nswitch I{i} make on A{i} when on\nnet N{i} B1:IN{i} I{i}:1\n");
            back.Add($"I{i}:2");
        }

        for (var k = 1; k <= Relays; k++)
        {
            var a = 4 * k - 3;
            text.Append(CultureInfo.InvariantCulture, $$"""
                switch S{{a}} make on A{{a}} when on
                switch S{{a + 1}} make on A{{a + 1}} when on
                switch S{{a + 2}} break on A{{a + 2}} when on
                switch S{{a + 3}} make on A{{a + 3}} when on
                relay K{{k}} 24 V 30 mA { make ; make ; make }
                lamp DS{{k}} 24 V 40 mA
                net START{{k}} S{{a}}:2 S{{a + 1}}:1
                net COIL{{k}} S{{a + 1}}:2 K{{k}}:A1 K{{k}}:14
                net HOLD{{k}} S{{a + 2}}:2 K{{k}}:13
                net LIGHT{{k}} K{{k}}:34 S{{a + 3}}:1
                net LAMP{{k}} S{{a + 3}}:2 DS{{k}}:X1

                """);
            feed.AddRange([$"S{a + 2}:1", $"K{k}:23", $"K{k}:33"]);
            back.AddRange([$"K{k}:A2", $"DS{k}:X2"]);
            if (k > 1) text.Append(CultureInfo.InvariantCulture, $"net NEXT{k} K{k - 1}:24 S{a}:1\n");
        }

        if (which == "ring") text.Append(CultureInfo.InvariantCulture, $"net NEXT1 K{Relays}:24 S1:1\n");
        else feed.Add("S1:1");
        if (which == "deep") text.Append(CultureInfo.InvariantCulture, $"expect DS{Relays} released\n");
        text.Append(CultureInfo.InvariantCulture, $"net FEED {string.Join(' ', feed)}\nnet RTN {string.Join(' ', back)}\n");
        return text.ToString();
    }
}
