using System.Diagnostics;
using Schematic.Cli.LanguageServer;
using Xunit;

namespace Schematic.Tests.LanguageServer;

public class WorkspacePanelsTests
{
    [Fact]
    public void A_panel_that_uses_a_file_is_found_beside_a_pipe_that_is_not_waited_for()
    {
        if (OperatingSystem.IsWindows()) return;
        var folder = Directory.CreateTempSubdirectory("schematic-workspace-").FullName;
        try
        {
            using (var process = Process.Start("mkfifo", Path.Combine(folder, "a-pipe.panel"))) process.WaitForExit();
            var part = Path.Combine(folder, "part.panel");
            File.WriteAllText(part, "resistor R1 47 ohm\n");
            File.WriteAllText(Path.Combine(folder, "main.panel"), "use \"part.panel\" as P\n");
            var found = Assert.Single(new WorkspacePanels().ThatUse(part, [part], _ => null));
            Assert.Contains(found.Loaded.Syntaxes, s => s.Source.FileName == part);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
