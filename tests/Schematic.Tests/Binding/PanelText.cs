using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Tests.Binding;

/// <summary>Everything that a panel states, as text; places in files are left out. Two panels mean the same when it is equal.</summary>
internal static class PanelText
{
    private static readonly Dictionary<Type, PropertyInfo[]> Properties = [];
    private static readonly Lock Gate = new();

    public static string Describe(Panel panel)
    {
        var text = new StringBuilder();
        Write(text, panel);
        return text.ToString();
    }

    private static void Write(StringBuilder text, object? value)
    {
        switch (value)
        {
            case null:
                text.Append("null");
                break;
            case string s:
                text.Append('"').Append(s).Append('"');
                break;
            case double d:
                text.Append(d.ToString("R", CultureInfo.InvariantCulture));
                break;
            case IDictionary dictionary:
                WriteAll(text, dictionary.Keys.Cast<string>().Order(StringComparer.Ordinal).Select(k => (object?)$"{k}={dictionary[k]}"));
                break;
            case IReadOnlySet<string> set:
                WriteAll(text, set.Order(StringComparer.Ordinal));
                break;
            case IEnumerable list:
                WriteAll(text, list.Cast<object?>());
                break;
            case IFormattable or bool:
                text.Append(CultureInfo.InvariantCulture, $"{value}");
                break;
            default:
                WriteProperties(text, value);
                break;
        }
    }

    private static void WriteAll(StringBuilder text, IEnumerable<object?> values)
    {
        text.Append('[');
        foreach (var value in values)
        {
            Write(text, value);
            text.Append('\n');
        }

        text.Append(']');
    }

    private static void WriteProperties(StringBuilder text, object value)
    {
        text.Append(value.GetType().Name).Append('{');
        foreach (var property in PropertiesOf(value.GetType()))
        {
            text.Append(property.Name).Append('=');
            Write(text, property.GetValue(value));
            text.Append(' ');
        }

        text.Append('}');
    }

    private static PropertyInfo[] PropertiesOf(Type type)
    {
        lock (Gate)
        {
            if (!Properties.TryGetValue(type, out var properties))
            {
                properties = [.. type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
                    .Where(p => p.PropertyType != typeof(SourceSpan) && p.GetIndexParameters().Length == 0 && p.Name != "Rest")];
                Properties.Add(type, properties);
            }

            return properties;
        }
    }
}
