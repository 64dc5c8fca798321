using System.Globalization;
using BenchmarkDotNet.Running;
using Schematic.Benchmarks;
using Schematic.Benchmarks.Fuzz;
using Schematic.Benchmarks.Mutants;

return args switch
{
    ["cold", .. var rest] => ColdStart.Run(RepositoryRoot.Find(), rest.FirstOrDefault()),
    ["growth"] => GrowthRuns.Run(RepositoryRoot.Find()),
    ["load", var lines] => GrowthRuns.Load(int.Parse(lines, CultureInfo.InvariantCulture)),
    ["circuits"] => CircuitRuns.Run(),
    ["editor"] => EditorRuns.Run(),
    ["watch"] => WatchRuns.Run(RepositoryRoot.Find()),
    ["layout"] => LayoutRuns.Run(),
    ["layout-one", var contacts] => LayoutRuns.RunOne(int.Parse(contacts, CultureInfo.InvariantCulture)),
    ["pack", .. var rest] => PackRuns.Run(rest),
    ["page"] => PageRuns.Run(RepositoryRoot.Find()),
    ["compare"] => GraphDrawingRuns.Run(),
    ["proof", .. var rest] => ProofRun.Run(rest),
    ["bench", "note", var panel, var side, .. var words] => BenchNotes.Run(panel, Enum.Parse<Schematic.Bench.BenchSide>(side, ignoreCase: true), words),
    ["bench", "panel", var name, var size, .. var seed] => BenchNotes.PrintPanel(name, int.Parse(size, CultureInfo.InvariantCulture), seed),
    ["bench", .. var rest] => BenchRun.Run(rest.FirstOrDefault() ?? "all", rest.Length > 1 ? int.Parse(rest[1], CultureInfo.InvariantCulture) : 200),
    ["fuzz", .. var rest] => FuzzRun.Run(rest),
    ["mutants", .. var rest] => MutantRun.Run(rest),
    ["faults", .. var rest] => FaultRuns.Run(RepositoryRoot.Find(), rest),
    ["help"] or [] => Help(),
    _ => RunBenchmarks(args),
};

static int RunBenchmarks(string[] args)
{
    BenchmarkSwitcher.FromAssembly(typeof(RepositoryRoot).Assembly).Run(args);
    return 0;
}

static int Help()
{
    Console.WriteLine("""
        cold [FOLDER]  'check' and 'draw' of the main example beside an empty program: processor time, peak; packages of the tool; or only
                       the native program that is in a folder
        growth         time and memory of long files and large packs
        proof [PANEL]  time the proof in every position: chain, deep or ring of 40 actuators and 10 relays
        proof NAME N   the same of a panel with N of one thing; 'proof all' lists them
        editor         time of findings and completion while somebody types into a panel of 2,000 lines
        watch          time from a save of the main example to the painted preview, in a headless Chromium
        layout         time and memory of wiring sheets of 250, 1,000 and 4,000 contacts
        bench [WHICH] [UNITS]  ring-out plans, diagnosis and drafts of generated units: plan, single, double, mistake, learn, grow
        bench note FILE SIDE [WORDS]  the readings file of a ring-out with the faults and mistakes that have these words, the first so many steps where a number is among them
        bench panel NAME N [SEED]  prints the panel file with N of one thing ('proof all' lists the names), or the unit of N contacts, to be measured by hand
        circuits       circuit sheets of the examples and of twenty generated designs: sheets, crossings, fill, time
        pack [CONTACTS SEED DIR]  pages and fill of whole packs, of the examples and of generated designs of 300 contacts; or one, as SVG and PNG into DIR
        page           size of the page of each example, time to write it, and time until it can be operated in Chromium
        compare        crossings, bends and time beside Graphviz (needs the program dot)
        fuzz [MINUTES] [SEED]  mutants of all examples and snippets, readings, editors and messages: all are read, checked and formatted, every
                       fourth is printed, listed and read again, each 250th drawn; 'fuzz one SEED' and 'fuzz file PATH' run one again
        mutants BUILT REPORT FOLDER EVERY TESTS...  the mutants that Stryker.NET made of a folder, in one process: seconds where a host for each takes an hour
        faults [KILLS] [SEED] [FOLDER]  'draw' and 'format --write' killed at random moments, and with a disk that is full at each write; the
                       native program, made first or in a folder
        --filter '*'   all micro benchmarks (BenchmarkDotNet)
        """);
    return 0;
}
