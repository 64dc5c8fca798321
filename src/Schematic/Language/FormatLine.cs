using System.Collections.Immutable;

namespace Schematic.Language;

/// <summary>One line of a panel file, to be laid out.</summary>
/// <param name="Depth">How many blocks it stands in; closing braces at its start are counted off.</param>
/// <param name="Units">Its words; empty for a blank line or a comment of its own.</param>
/// <param name="Comment">The comment with its mark, or null.</param>
internal sealed record FormatLine(int Depth, ImmutableArray<FormatUnit> Units, string? Comment)
{
    /// <summary>The line as it is, where it is not to be moved; or null.</summary>
    public string? AsWritten { get; private init; }

    /// <summary>A line that is not to be moved.</summary>
    public static FormatLine Kept(string line) => new(0, [], null) { AsWritten = line };

    /// <summary>Whether it may stand in columns with its neighbours: whole statements, their blocks closed.</summary>
    public bool IsAlignable { get; } = !Units.IsEmpty && IsBalanced(Units);

    /// <summary>
    /// What two lines must have in common to stand in the same columns throughout: the kinds of their words, and outside of
    /// blocks the keyword.
    /// </summary>
    public string Shape { get; } = ShapeOf(Depth, Units);

    private static bool IsBalanced(ImmutableArray<FormatUnit> units)
    {
        var depth = 0;
        foreach (var unit in units)
        {
            if (unit.Kind == FormatUnitKind.Open) depth++;
            else if (unit.Kind == FormatUnitKind.Close && --depth < 0) return false;
        }

        return depth == 0;
    }

    private static string ShapeOf(int depth, ImmutableArray<FormatUnit> units)
    {
        if (units.IsEmpty) return "";
        var kinds = string.Concat(units.Select(u => (char)('a' + (int)u.Kind)));
        return depth == 0 ? units[0].Text + ' ' + kinds : kinds;
    }
}
