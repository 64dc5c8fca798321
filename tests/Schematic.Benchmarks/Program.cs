using BenchmarkDotNet.Running;
using Schematic.Benchmarks;

var root = RepositoryRoot.Find();
return args switch
{
    ["cold", ..] => ColdStart.Run(root),
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
        --filter '*'   all micro benchmarks (BenchmarkDotNet)
        """);
    return 0;
}
