using System.Collections;
using System.Globalization;
using System.Reflection;
using Schematic.Inserts;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Tests.Binding;

/// <summary>The model of a panel in words, a line for each thing, every figure of it: what the kept texts of these tests hold.</summary>
/// <param name="from">Places are counted from here in the file.</param>
internal sealed class ModelWords(int from = 0)
{
    private const int Deepest = 9;

    private readonly Dictionary<Type, PropertyInfo[]> _facts = [];

    /// <summary>A line for each thing that a panel holds and for each of its settings.</summary>
    public IEnumerable<string> Lines(Panel panel)
    {
        foreach (var property in Facts(panel.GetType()))
        {
            var value = property.GetValue(panel);
            if (value is IEnumerable all and not string)
            {
                foreach (var one in all) yield return $"{property.Name}: {Words(one, 0)}";
            }
            else
            {
                yield return $"{property.Name}: {Words(value, 0)}";
            }
        }
    }

    /// <summary>A value with all that it holds; places as their first letter, names of types left out.</summary>
    private string Words(object? value, int depth) => value switch
    {
        null => "-",
        string text => $"\"{text}\"",
        SourceSpan span => $"@{span.Span.Start - from}",
        TextSpan span => $"@{span.Start - from}",
        TerminalId terminal => $"{terminal.Part}:{terminal.Name}",
        Terminal terminal => $"{terminal.Name}@{terminal.Span.Span.Start - from}",
        ContactPosition contact => FormattableString.Invariant($"{contact.Name}({contact.XMm:0.###},{contact.YMm:0.###})"),
        IFormattable figure => figure.ToString(null, CultureInfo.InvariantCulture),
        bool flag => flag ? "yes" : "no",
        _ when depth > Deepest => "...",
        IEnumerable all => $"[{string.Join(' ', Ordered(all).Select(o => Words(o, depth + 1)))}]",
        _ => $"{value.GetType().Name}({string.Join(", ", Facts(value.GetType()).Select(p => (p.Name, Value: p.GetValue(value))).Where(p => !IsUsual(p.Name, p.Value)).Select(p => $"{p.Name}={Words(p.Value, depth + 1)}"))})",
    };

    /// <summary>What is kept without an order is told in that of its words.</summary>
    private IEnumerable<object?> Ordered(IEnumerable all) =>
        all is IDictionary || all.GetType().Name.Contains("Set", StringComparison.Ordinal) || all.GetType().Name.Contains("Dictionary", StringComparison.Ordinal)
            ? all.Cast<object?>().OrderBy(o => Words(o, 0), StringComparer.Ordinal)
            : all.Cast<object?>();

    private static bool IsUsual(string name, object? value) =>
        value is null or false or "" or ICollection { Count: 0 } || (name, value) is (nameof(Part.WiresPerTerminal), 3) or (nameof(Part.SparePieces), 0);

    /// <summary>What was stated or is kept: properties that are set, not those that are worked out of others.</summary>
    private PropertyInfo[] Facts(Type type)
    {
        if (_facts.TryGetValue(type, out var known)) return known;
        return _facts[type] =
        [
            .. type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
                .Where(p => p.GetIndexParameters().Length == 0 && (p.CanWrite || type.IsValueType) && p.Name != "EqualityContract")
                .OrderBy(p => p.Name, StringComparer.Ordinal),
        ];
    }
}
