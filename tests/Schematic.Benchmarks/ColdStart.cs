using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;

namespace Schematic.Benchmarks;

/// <summary>
/// Times whole commands from a cold process, as a ratio to an empty console program in the same run: both are published
/// ready to run, and the runs are interleaved so that a busy machine disturbs both alike.
/// </summary>
internal static class ColdStart
{
    private const int Rounds = 15;

    public static int Run(string root)
    {
        var work = Directory.CreateTempSubdirectory("cold-start-").FullName;
        try
        {
            var empty = Publish(WriteEmptyProgram(work), Path.Combine(work, "empty"), "empty");
            var tool = Publish(Path.Combine(root, "src", "Schematic.Cli"), Path.Combine(work, "tool"), "Schematic.Cli");
            var panel = Path.Combine(root, "examples", "lever-frame", "lever.panel");
            Report(empty, tool, panel, Path.Combine(work, "out"));
            return 0;
        }
        finally
        {
            Directory.Delete(work, recursive: true);
        }
    }

    private static void Report(string empty, string tool, string panel, string output)
    {
        List<double> idle = [], check = [], draw = [];
        for (var round = 0; round < Rounds; round++)
        {
            idle.Add(Time(empty, []));
            check.Add(Time(tool, ["check", panel]));
            draw.Add(Time(tool, ["draw", panel, "--out", output, "--format", "svg,png,pdf"]));
        }

        var unit = Median(idle);
        Print("empty console program", unit, unit);
        Print("check, main example", Median(check), unit);
        Print("draw svg,png,pdf, main example", Median(draw), unit);
    }

    private static void Print(string what, double milliseconds, double unit) => Console.WriteLine(string.Format(
        CultureInfo.InvariantCulture, "{0,-34} {1,8:0} ms {2,7:0.0} x", what, milliseconds, milliseconds / unit));

    private static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);

    private static double Time(string program, string[] arguments)
    {
        var clock = Stopwatch.StartNew();
        Execute(program, arguments);
        return clock.Elapsed.TotalMilliseconds;
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

    private static string Publish(string project, string folder, string name)
    {
        Execute("dotnet", [
            "publish", project, "-c", "Release", "-r", RuntimeInformation.RuntimeIdentifier, "--self-contained", "false",
            "-p:PublishReadyToRun=true", "-o", folder, "-v", "quiet", "--nologo",
        ]);
        return Path.Combine(folder, OperatingSystem.IsWindows() ? name + ".exe" : name);
    }

    private static void Execute(string program, string[] arguments)
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
