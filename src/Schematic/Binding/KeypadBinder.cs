using Schematic.Language;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>Builds keypads: a line of key names for each row.</summary>
internal static class KeypadBinder
{
    /// <summary>The word that begins the statement.</summary>
    public const string Keyword = "keypad";

    private const string KeysClause = "keys";
    private const int MostLines = 16;

    /// <summary>The names of the keys, row by row, as far as they can be read; nothing is reported.</summary>
    public static IEnumerable<(string Name, TextSpan Span)> KeyNames(PartSyntax syntax, Scope scope)
    {
        var ranges = new NameRanges(new BindingReporter());
        return syntax.Block.Where(c => c.Keyword == KeysClause).SelectMany(c => c.All<ContactSyntax>())
            .Where(c => c.Part is null && !c.IsNotTraced).SelectMany(c => ranges.Expand(c.From, c.To, scope).Select(n => (n, c.Span)))
            .DistinctBy(k => k.n).Select(k => (k.n, k.Span));
    }

    /// <summary>Builds one.</summary>
    public static Keypad Make(DeviceStatement device)
    {
        var block = new ClauseReader(device.Syntax.Block, device.Scope, device.Report, KeysClause);
        var lines = block.Clauses.Where(c => c.Keyword == KeysClause).Select(c => device.NamesOf(c).ToList()).ToList();
        device.CheckTwice(lines.SelectMany(l => l));
        if (lines.Count == 0 && !device.Syntax.HasErrors)
            device.Report.MissingValue(device.Span, $"`{device.ShownName}` has no keys.", "Give a line for each row: keys 1 2 3.");
        if (lines.Count > MostLines || lines.Any(l => l.Count > MostLines))
            device.Report.OutOfRange(device.Span, $"A keypad has at most {MostLines} rows and columns.", "Describe it in parts.");
        foreach (var (name, span) in lines.SelectMany(l => l).Where(k => !IsName(k.Name)))
            device.Report.OutOfRange(span, $"`{name}` cannot be part of a name.", "Give the key a name of letters, digits and hyphens, such as star or hash.");
        var keys =
            from line in lines.Take(MostLines).Select((l, i) => (Keys: l, Row: i + 1))
            from key in line.Keys.Take(MostLines).Select((k, i) => (k.Name, k.Span, Column: i + 1))
            where IsName(key.Name)
            select new KeypadKey(key.Name, $"R{line.Row}", $"C{key.Column}", key.Span);
        var keypad = new Keypad(device.Name, [.. keys.DistinctBy(k => k.Name)], device.Span) { Rating = device.Reader.Rating() };
        return DeviceStatement.WithTerminals(keypad, [.. keypad.Rows, .. keypad.Columns]);
    }

    /// <summary>Joins rows and columns to the contacts of the unit that the keypad sits in.</summary>
    public static void Attach(DeviceStatement device, Keypad keypad, TerminalBinder terminals, PartList parts)
    {
        foreach (var (word, own) in new[] { ("rows", keypad.Rows), ("columns", keypad.Columns) })
        {
            if (device.Syntax.Block.FirstOrDefault(c => c.Keyword == word) is not { Values.Length: > 0 } clause || own.IsEmpty) continue;
            var (contacts, hasBrokenRange) = terminals.BindJoints(device.Scope, clause.All<ContactSyntax>(), own.Length);
            if (contacts.Count != own.Length && !hasBrokenRange)
            {
                device.Report.CountMismatch(
                    device.Scope.At(clause.Span), $"{contacts.Count} {(contacts.Count == 1 ? "contact is" : "contacts are")} given for {own.Length} {(own.Length == 1 ? word[..^1] : word)}.",
                    $"Give one contact for each of {string.Join(", ", own)}, in this order.");
            }

            for (var i = 0; i < own.Length; i++) parts.Attach(keypad.At(own[i]), contacts, i);
        }
    }

    private static bool IsName(string key) => Characters.ScanSimpleName("K-" + key) == key.Length + 2;
}
