using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Schematic.Language;

namespace Schematic.Binding.Import;

/// <summary>Turns a spreadsheet of wires or of contacts into statements of the language.</summary>
/// <param name="sheet">The spreadsheet.</param>
/// <param name="columns">What its columns mean.</param>
/// <param name="fileName">What the first remark names.</param>
public sealed partial class SheetImporter(Spreadsheet sheet, ColumnMap columns, string fileName)
{
    private static readonly string[] UnusedWords = ["spare", "nc", "n/c", "n.c.", "not connected", "unused", "not used", "-"];

    private readonly StringBuilder _text = new();
    private readonly List<string> _problems = [];
    private readonly Dictionary<string, SortedSet<string>> _parts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<string>> _nets = new(StringComparer.Ordinal);

    /// <summary>Whether the terminals that are named are declared as well, so that the result is a panel file of its own.</summary>
    public bool Declares { get; init; }

    /// <summary>Rows that became no statement, as sentences.</summary>
    public IReadOnlyList<string> Problems => _problems;

    /// <summary>The statements of a sheet with a wire in each row.</summary>
    public string Wires()
    {
        var wires = new List<string>();
        var stated = sheet.Rows.Select(StatedName).ToHashSet(StringComparer.Ordinal);
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in sheet.Rows)
        {
            if (Terminal(row, "from") is not { } from || Terminal(row, "to") is not { } to)
            {
                Skip(row, "it does not say from where to where the wire goes");
                continue;
            }

            var name = StatedName(row);
            for (var i = names.Count + 1; name.Length == 0; i++)
            {
                var free = $"W{i.ToString(CultureInfo.InvariantCulture)}";
                if (!stated.Contains(free) && !names.Contains(free)) name = free;
            }

            if (!names.Add(name))
            {
                Skip(row, $"the name {name} was there before");
                continue;
            }

            var words = new[] { "wire", name, Gauge(row), Colour(row, out var remark), Length(row), from, "->", to };
            wires.Add(string.Join(' ', words.Where(w => w.Length > 0)) + remark);
            var net = row.At(columns.Of("net"));
            if (net.Length > 0) AddToNet(net, from, to);
        }

        _text.Append(CultureInfo.InvariantCulture, $"# {Counted(wires.Count, "wire")} from {fileName}\n");
        Declare();
        foreach (var wire in wires) _text.Append(wire).Append('\n');
        WriteNets();
        return PanelFormatter.Format(_text.ToString());
    }

    /// <summary>
    /// The statements of a sheet with a contact of <paramref name="part"/> in each row: nets of what is known, spare contacts, and
    /// contacts that are not traced where nothing is said of them.
    /// </summary>
    public string Contacts(string part)
    {
        var order = new List<string>();
        var spare = new List<string>();
        var open = new List<string>();
        foreach (var row in sheet.Rows)
        {
            var contact = NameOf(row.At(columns.Of("contact")), "");
            if (contact.Length == 0 || order.Contains(contact))
            {
                Skip(row, contact.Length == 0 ? "it names no contact" : $"contact {contact} was there before");
                continue;
            }

            order.Add(contact);
            var use = row.At(columns.Of("net"));
            if (use.Length == 0 || use == "?") open.Add(contact);
            else if (UnusedWords.Contains(use.ToLowerInvariant())) spare.Add(contact);
            else AddToNet(use, $"{part}:{contact}");
        }

        var numbered = order.Select((c, i) => c == (i + 1).ToString(CultureInfo.InvariantCulture)).All(b => b);
        var mark = Declares ? "" : "# ";
        _text.Append(CultureInfo.InvariantCulture, $"# {Counted(order.Count, "contact")} from {fileName}\n");
        _text.Append("# A strip stands in for the arrangement: put the right one in its place, 'schematic explain spiral'.\n");
        _text.Append(CultureInfo.InvariantCulture, $"{mark}connector {part} {{\n{mark}  strip {order.Count}{(numbered ? "" : $"  names {string.Join(' ', order)}")}\n");
        if (spare.Count > 0) _text.Append(CultureInfo.InvariantCulture, $"{mark}  spare {string.Join(' ', spare)}\n");
        if (open.Count > 0) _text.Append(CultureInfo.InvariantCulture, $"{mark}  not-traced {string.Join(' ', open)}\n");
        _text.Append(CultureInfo.InvariantCulture, $"{mark}}}\n");
        WriteNets();
        return PanelFormatter.Format(_text.ToString());
    }

    private void Skip(SpreadsheetRow row, string reason)
    {
        _problems.Add($"line {row.Line.ToString(CultureInfo.InvariantCulture)}: {reason}");
        _text.Append(CultureInfo.InvariantCulture, $"# line {row.Line}, {reason}: {string.Join(" ; ", row.Cells)}\n");
    }

    /// <summary>A terminal from one column (<c>J1:5</c>, <c>J1-5</c>, <c>J1 5</c>) or from two, part and contact; null when it is none.</summary>
    private string? Terminal(SpreadsheetRow row, string meaning)
    {
        var cell = row.At(columns.Of(meaning));
        var contact = row.At(columns.Of(meaning + "-contact"));
        var match = TerminalPattern().Match(contact.Length > 0 ? $"{cell}:{contact}" : cell);
        if (!match.Success) return null;
        var (part, name) = (match.Groups["part"].Value, match.Groups["contact"].Value);
        if (!_parts.TryGetValue(part, out var contacts)) _parts.Add(part, contacts = new SortedSet<string>(Model.NaturalOrder.Comparer));
        contacts.Add(name);
        return $"{part}:{name}";
    }

    private string Gauge(SpreadsheetRow row)
    {
        var cell = row.At(columns.Of("gauge")).Replace(',', '.');
        if (NumberPattern().Match(cell) is not { Success: true } number) return "";
        var heading = columns.HeadingOf("gauge") + cell;
        var isMetric = heading.Contains("mm", StringComparison.OrdinalIgnoreCase)
            || (number.Value.Contains('.') && !heading.Contains("awg", StringComparison.OrdinalIgnoreCase));
        return isMetric ? $"{number.Value} mm2" : $"{number.Value} AWG";
    }

    private string Length(SpreadsheetRow row)
    {
        var cell = row.At(columns.Of("length")).Replace(',', '.');
        if (NumberPattern().Match(cell) is not { Success: true } number) return "";
        var unit = UnitPattern().Match(cell[(number.Index + number.Length)..]) is { Success: true } own ? own : UnitPattern().Match(columns.HeadingOf("length"));
        return $"{number.Value} {(unit.Success ? unit.Value.ToLowerInvariant() : "mm")}";
    }

    /// <summary>The colour as the language writes it; one that it does not know becomes a remark.</summary>
    private string Colour(SpreadsheetRow row, out string remark)
    {
        remark = "";
        var cell = row.At(columns.Of("colour"));
        if (cell.Length == 0) return "";
        foreach (var candidate in new[] { cell.ToLowerInvariant(), cell.ToUpperInvariant(), cell.ToLowerInvariant().Replace(' ', '/'), cell.ToLowerInvariant().Replace('-', '/') })
        {
            if (Colours.Find(candidate) is not null) return candidate;
        }

        remark = $"  # colour: {cell}";
        return "";
    }

    private void AddToNet(string use, params ReadOnlySpan<string> terminals)
    {
        if (!_nets.TryGetValue(use, out var members)) _nets.Add(use, members = []);
        foreach (var terminal in terminals)
        {
            if (!members.Contains(terminal)) members.Add(terminal);
        }
    }

    private void Declare()
    {
        if (_parts.Count == 0) return;
        _text.Append(Declares ? "# What the wires end on; put the right statement in the place of each.\n" : "# What the wires end on; declare what is not declared yet.\n");
        foreach (var (part, contacts) in _parts.OrderBy(p => p.Key, Model.NaturalOrder.Comparer))
            _text.Append(CultureInfo.InvariantCulture, $"{(Declares ? "" : "# ")}terminals {part} {{ {string.Join(' ', contacts)} }}\n");
    }

    private void WriteNets()
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (use, members) in _nets)
        {
            var plain = NameOf(use, "NET");
            var name = plain;
            for (var i = 2; !names.Add(name); i++) name = $"{plain}_{i.ToString(CultureInfo.InvariantCulture)}";
            var remark = name == use ? "" : $"  # {use}";
            _text.Append(CultureInfo.InvariantCulture, $"net {name} {string.Join(' ', members)}{remark}\n");
        }
    }

    private string StatedName(SpreadsheetRow row) => NameOf(row.At(columns.Of("name")), "");

    private static string Counted(int count, string what) => $"{count.ToString(CultureInfo.InvariantCulture)} {what}{(count == 1 ? "" : "s")}";

    /// <summary>A cell as a name of the language; <paramref name="otherwise"/> where nothing is left of it.</summary>
    private static string NameOf(string cell, string otherwise)
    {
        var name = NotInNames().Replace(cell.Trim(), "_").Trim('_');
        if (name.Length > 60) name = name[..60];
        return name.Length == 0 ? otherwise : name;
    }

    [GeneratedRegex(@"^(?<part>[A-Za-z_]\w*)\s*[:/.\- ]\s*(?<contact>[\w+]+|-)$")]
    private static partial Regex TerminalPattern();

    [GeneratedRegex(@"\d+(\.\d+|/0)?")]
    private static partial Regex NumberPattern();

    [GeneratedRegex(@"\b(mm|cm|m|in|ft)\b", RegexOptions.IgnoreCase)]
    private static partial Regex UnitPattern();

    [GeneratedRegex(@"[^\w+-]+")]
    private static partial Regex NotInNames();
}
