using Xunit;

namespace Schematic.Tests.Page;

/// <summary>
/// A fact that needs a browser. On a machine without one it is skipped, and counted as skipped; the build machine fails instead
/// (<c>.ci/run</c> installs Debian's package or stops).
/// </summary>
internal sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute() => Skip = BrowserProgram.WhyMissing;
}

/// <summary>The same for a theory.</summary>
internal sealed class BrowserTheoryAttribute : TheoryAttribute
{
    public BrowserTheoryAttribute() => Skip = BrowserProgram.WhyMissing;
}

/// <summary>The browser of the machine: Chromium as Debian has it, or what CHROMIUM names.</summary>
internal static class BrowserProgram
{
    public static string? Path { get; } = new[]
    {
        Environment.GetEnvironmentVariable("CHROMIUM"), "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome",
    }.FirstOrDefault(p => p is not null && File.Exists(p));

    public static string? WhyMissing => Path is null ? "No Chromium on this machine: install the package 'chromium', or name one in CHROMIUM." : null;
}
