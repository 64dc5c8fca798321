using System.Globalization;
using System.Runtime.InteropServices;

namespace Schematic.Benchmarks;

/// <summary>
/// Measures whole commands from a cold process beside an empty .NET program in the same run, in turn, so that a busy machine disturbs
/// both alike: processor time of user and system, its ratio, and the peak of memory. Then the packages of the tool. <c>cold FOLDER</c>
/// takes the native program that is there, and leaves the ordinary one and the packages out: making them takes minutes.
/// </summary>
internal static class ColdStart
{
    private const int ManyRounds = 40;
    private const int FewRounds = 15;

    public static int Run(string root, string? made = null)
    {
        var work = Directory.CreateTempSubdirectory("cold-start-").FullName;
        try
        {
            var cli = Path.Combine(root, "src", "Schematic.Cli");
            var empty = Publish(WriteEmptyProgram(work), Path.Combine(work, "empty"), "empty", "-p:PublishReadyToRun=true", "--self-contained", "false");
            var native = made is null ? Publish(cli, Path.Combine(work, "native"), "Schematic.Cli") : Path.Combine(made, "Schematic.Cli");
            var panel = Path.Combine(root, "examples", "lever-frame", "lever.panel");
            var output = Path.Combine(work, "out");
            string[] check = ["check", panel];
            Compare(
                empty, ManyRounds,
                made is null ? [("check", native, check), ("check, not native", Publish(cli, Path.Combine(work, "ordinary"), "Schematic.Cli", "-p:PublishAot=false"), check)] : [("check", native, check)]);
            Compare(
                empty, FewRounds,
                ("draw svg", native, ["draw", panel, "--out", output, "--format", "svg"]),
                ("draw svg,pdf", native, ["draw", panel, "--out", output, "--format", "svg,pdf"]),
                ("draw svg,png,pdf", native, ["draw", panel, "--out", output, "--format", "svg,png,pdf"]));
            if (made is null) Sizes(cli, work);
            return 0;
        }
        finally
        {
            Directory.Delete(work, recursive: true);
        }
    }

    /// <summary>Publishes the command line as the native program of this system.</summary>
    public static string PublishNative(string root, string folder) =>
        Publish(Path.Combine(root, "src", "Schematic.Cli"), folder, "Schematic.Cli");

    private static void Compare(string empty, int rounds, params (string What, string Program, string[] Arguments)[] commands)
    {
        List<double> idle = [];
        var runs = commands.Select(_ => new List<double>()).ToList();
        for (var round = 0; round < rounds; round++)
        {
            idle.Add(MeasuredRun.SecondsOf(empty));
            foreach (var (command, own) in commands.Zip(runs))
            {
                TakeAway(command.Arguments);
                own.Add(MeasuredRun.SecondsOf(command.Program, command.Arguments));
            }
        }

        Print("empty program", idle, idle, MeasuredRun.PeakOf(empty));
        foreach (var (command, own) in commands.Zip(runs))
        {
            TakeAway(command.Arguments);
            Print(command.What, own, idle, MeasuredRun.PeakOf(command.Program, command.Arguments));
        }
    }

    /// <summary>What was drawn in the round before is taken away: a file that has not changed is not written again.</summary>
    private static void TakeAway(string[] arguments)
    {
        if (Array.IndexOf(arguments, "--out") is >= 0 and var at && Directory.Exists(arguments[at + 1])) Directory.Delete(arguments[at + 1], recursive: true);
    }

    /// <summary>The middle run, the quarters beside it, and the ratio of each run to the empty one of its round.</summary>
    private static void Print(string what, List<double> runs, List<double> idle, double peak)
    {
        var (time, ratio) = (Quarters([.. runs.Select(r => r * 1000)]), Quarters([.. runs.Zip(idle, (own, beside) => own / beside)]));
        Console.WriteLine(string.Format(
            CultureInfo.InvariantCulture, "{0,-20} {1,7:0.0} ms ({2:0.0} to {3:0.0}) {4,7:0.00} x ({5:0.00} to {6:0.00}) {7,5:0} MB, {8} runs",
            what, time.Middle, time.Low, time.High, ratio.Middle, ratio.Low, ratio.High, peak, runs.Count));
    }

    private static (double Low, double Middle, double High) Quarters(List<double> figures)
    {
        figures.Sort();
        return (figures[figures.Count / 4], figures[figures.Count / 2], figures[figures.Count * 3 / 4]);
    }

    /// <summary>What has to be fetched for a system, and what it takes on the disk.</summary>
    private static void Sizes(string cli, string work)
    {
        var packages = Path.Combine(work, "packages");
        MeasuredRun.Execute("dotnet", ["pack", cli, "-o", packages, "-v", "quiet", "--nologo"]);
        MeasuredRun.Execute("dotnet", ["tool", "install", "Schematic.Cli", "--tool-path", Path.Combine(work, "tool"), "--source", packages]);
        foreach (var package in new DirectoryInfo(packages).GetFiles().OrderBy(f => f.Name, StringComparer.Ordinal))
            Console.WriteLine(string.Format(CultureInfo.InvariantCulture, "{0,-36} {1,7:0.0} MB", package.Name, package.Length / 1e6));
        // The installer keeps each package beside what it unpacked.
        var installed = new DirectoryInfo(Path.Combine(work, "tool")).GetFiles("*", SearchOption.AllDirectories).Where(f => f.Extension != ".nupkg").Sum(f => f.Length);
        Console.WriteLine(string.Format(CultureInfo.InvariantCulture, "{0,-36} {1,7:0.0} MB", "installed", installed / 1e6));
    }

    private static string WriteEmptyProgram(string work)
    {
        var folder = Directory.CreateDirectory(Path.Combine(work, "source")).FullName;
        File.WriteAllText(Path.Combine(folder, "empty.csproj"), """
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup>
                <OutputType>Exe</OutputType>
                <TargetFramework>net10.0</TargetFramework>
                <InvariantGlobalization>true</InvariantGlobalization>
              </PropertyGroup>
            </Project>
            """);
        File.WriteAllText(Path.Combine(folder, "Program.cs"), "return 0;");
        return folder;
    }

    private static string Publish(string project, string folder, string name, params string[] options)
    {
        MeasuredRun.Execute("dotnet", ["publish", project, "-c", "Release", "-r", RuntimeInformation.RuntimeIdentifier, "-o", folder, "-v", "quiet", "--nologo", .. options]);
        return Path.Combine(folder, OperatingSystem.IsWindows() ? name + ".exe" : name);
    }
}
