using System.Globalization;
using System.Runtime.InteropServices;

namespace Schematic.Benchmarks;

/// <summary>
/// Measures whole commands from a cold process beside an empty .NET program in the same run, in turn, so that a busy machine disturbs
/// both alike: processor time of user and system, its ratio, and the peak of memory. Then the packages of the tool.
/// </summary>
internal static class ColdStart
{
    // The clock counts in hundredths of a second: the shorter a command is, the more often it runs.
    private const int ManyRounds = 40;
    private const int FewRounds = 10;

    public static int Run(string root)
    {
        var work = Directory.CreateTempSubdirectory("cold-start-").FullName;
        try
        {
            var cli = Path.Combine(root, "src", "Schematic.Cli");
            var empty = Publish(WriteEmptyProgram(work), Path.Combine(work, "empty"), "empty", "-p:PublishReadyToRun=true", "--self-contained", "false");
            var native = Publish(cli, Path.Combine(work, "native"), "Schematic.Cli");
            var ordinary = Publish(cli, Path.Combine(work, "ordinary"), "Schematic.Cli", "-p:PublishAot=false");
            var panel = Path.Combine(root, "examples", "lever-frame", "lever.panel");
            var output = Path.Combine(work, "out");
            Compare(empty, ManyRounds, ("check", native, ["check", panel]), ("check, not native", ordinary, ["check", panel]));
            Compare(
                empty, FewRounds,
                ("draw svg", native, ["draw", panel, "--out", output, "--format", "svg"]),
                ("draw svg,pdf", native, ["draw", panel, "--out", output, "--format", "svg,pdf"]),
                ("draw svg,png,pdf", native, ["draw", panel, "--out", output, "--format", "svg,png,pdf"]));
            Sizes(cli, work);
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
        List<MeasuredRun> idle = [];
        var runs = commands.Select(_ => new List<MeasuredRun>()).ToList();
        for (var round = 0; round < rounds; round++)
        {
            idle.Add(MeasuredRun.Of(empty));
            foreach (var (command, own) in commands.Zip(runs))
            {
                // What was drawn in the round before is taken away: a file that has not changed is not written again.
                if (Array.IndexOf(command.Arguments, "--out") is >= 0 and var at && Directory.Exists(command.Arguments[at + 1])) Directory.Delete(command.Arguments[at + 1], recursive: true);
                own.Add(MeasuredRun.Of(command.Program, command.Arguments));
            }
        }

        var unit = idle.Average(r => r.Seconds);
        Print("empty program", idle, unit);
        foreach (var (command, own) in commands.Zip(runs)) Print(command.What, own, unit);
    }

    private static void Print(string what, List<MeasuredRun> runs, double unit) => Console.WriteLine(string.Format(
        CultureInfo.InvariantCulture, "{0,-20} {1,7:0} ms {2,7:0.0} x {3,7:0} MB", what,
        runs.Average(r => r.Seconds) * 1000, runs.Average(r => r.Seconds) / unit, runs.Average(r => r.PeakMB)));

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
