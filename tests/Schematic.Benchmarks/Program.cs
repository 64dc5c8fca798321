using BenchmarkDotNet.Running;
using Schematic.Benchmarks;

var root = RepositoryRoot.Find();
return args switch
{
    ["cold", ..] => ColdStart.Run(root),
    ["proof", .. var rest] => ProofRun.Run(rest.FirstOrDefault() ?? "chain"),
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
        cold           time 'check' and 'draw' of the main example against an empty console program
        proof [PANEL]  time the proof in every position: chain, deep or ring of 40 actuators and 10 relays
        --filter '*'   all micro benchmarks (BenchmarkDotNet)
        """);
    return 0;
}
