using System.Globalization;
using System.Text.RegularExpressions;

namespace Schematic.Tests.Reference;

/// <summary>Reads a table of outside figures that stands beside this file (see README.md there for the sources).</summary>
internal static partial class ReferenceTable
{
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Read(string fileName)
    {
        var lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Reference", fileName));
        var header = Cells(lines[0]);
        return
        [
            .. lines.Skip(1).Where(l => l.Length > 0)
                .Select(l => header.Zip(Cells(l)).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal)),
        ];
    }

    public static double Number(this IReadOnlyDictionary<string, string> row, string column) =>
        double.Parse(row[column], CultureInfo.InvariantCulture);

    private static List<string> Cells(string line) => [.. Cell().Matches(line).Select(m => m.Groups[1].Value.Trim('"'))];

    [GeneratedRegex("""(?:^|,)("[^"]*"|[^,]*)""")]
    private static partial Regex Cell();
}
