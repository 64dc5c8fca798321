using System.Text;
using Schematic.Cli;

namespace Schematic.Tests.Cli;

/// <summary>Runs the program without a process, in a folder of its own that is deleted afterwards.</summary>
internal sealed class CliRun : IDisposable
{
    public const string CleanPanel = """
        title "Desk" number DK-1
        connector J1 "desk plug" { pins ; solder ; strip 2 pitch 5 mm }
        terminals X1 "strip" { 1..2 }
        wire W1 22 AWG white 300 mm  J1:1 -> X1:1
        wire W2 22 AWG green 300 mm  J1:2 -> X1:2

        """;

    public const string WrongPanel = """
        terminals X1 "strip" { 1..2 }
        fuse F1 2 A
        net FEED X1:1 F1:1 F1:2 X1:2

        """;

    /// <summary>Lamps behind one dropper resistor, a lever each: far more cases than are solved.</summary>
    public static string UnprovedPanel { get; } = "supply PS1 24 V limit 100 A { + - }\nresistor R1 1 ohm 5 W\n"
        + string.Concat(Enumerable.Range(1, 24).Select(i =>
            $"actuator A{i} {{ off rest ; on }}\nswitch S{i} make on A{i} when on\nlamp DS{i} 24 V 40 mA\nnet N{i} S{i}:2 DS{i}:X1\n"))
        + $"net FEED PS1:+ R1:1\nnet BUS R1:2 {string.Join(' ', Enumerable.Range(1, 24).Select(i => $"S{i}:1"))}\n"
        + $"net RTN PS1:- {string.Join(' ', Enumerable.Range(1, 24).Select(i => $"DS{i}:X2"))}\n";

    public string Folder { get; } = Directory.CreateTempSubdirectory("schematic-cli-").FullName;

    public string Out { get; private set; } = "";

    public string Error { get; private set; } = "";

    public int Run(params string[] args) => RunWith([], args);

    public int RunWith(byte[] stdin, params string[] args)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var code = CliApplication.Run(args, output, error, new MemoryStream(stdin), Folder);
        (Out, Error) = (output.ToString(), error.ToString());
        return code;
    }

    public string Write(string name, string content) => Write(name, Encoding.UTF8.GetBytes(content));

    public string Write(string name, byte[] content)
    {
        var path = Path.Combine(Folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, content);
        return name;
    }

    public string[] Files(string folder) => Directory.Exists(Path.Combine(Folder, folder))
        ? [.. Directory.EnumerateFiles(Path.Combine(Folder, folder)).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)]
        : [];

    public byte[] Read(string name) => File.ReadAllBytes(Path.Combine(Folder, name));

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
