namespace Schematic.Model;

/// <summary>
/// The name of one place where a wire can end: a part's designator and the terminal's name on it, written
/// <c>J1:5</c> (item designation and terminal designation, joined by a colon as in IEC 61666, from memory).
/// Case matters in both.
/// </summary>
public readonly record struct TerminalId(string Part, string Name) : IComparable<TerminalId>
{
    /// <inheritdoc/>
    public override string ToString() => $"{Part}:{Name}";

    /// <summary>Designators and names in natural order: <c>J2</c> before <c>J10</c>.</summary>
    public int CompareTo(TerminalId other)
    {
        var byPart = NaturalOrder.Compare(Part, other.Part);
        return byPart != 0 ? byPart : NaturalOrder.Compare(Name, other.Name);
    }

    /// <summary>Whether <paramref name="left"/> stands before <paramref name="right"/>.</summary>
    public static bool operator <(TerminalId left, TerminalId right) => left.CompareTo(right) < 0;

    /// <summary>Whether <paramref name="left"/> stands after <paramref name="right"/>.</summary>
    public static bool operator >(TerminalId left, TerminalId right) => left.CompareTo(right) > 0;

    /// <summary>Whether <paramref name="left"/> stands before <paramref name="right"/> or is it.</summary>
    public static bool operator <=(TerminalId left, TerminalId right) => left.CompareTo(right) <= 0;

    /// <summary>Whether <paramref name="left"/> stands after <paramref name="right"/> or is it.</summary>
    public static bool operator >=(TerminalId left, TerminalId right) => left.CompareTo(right) >= 0;
}
