using System.Text;
using Schematic.Rendering;

namespace Schematic.Page;

/// <summary>
/// Writes HTML. Whatever comes from a panel goes through <see cref="Text"/> or an attribute and is escaped there; there is no other
/// way for it into the page.
/// </summary>
internal sealed class Markup
{
    private readonly StringBuilder _output = new(256 * 1024);
    private readonly Stack<string> _open = [];

    /// <summary>Opens an element; an attribute whose value is null is left away.</summary>
    public Markup Open(string element, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        WriteTag(element, attributes);
        _open.Push(element);
        return this;
    }

    /// <summary>An element without content and without an end.</summary>
    public Markup Void(string element, params ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        WriteTag(element, attributes);
        return this;
    }

    /// <summary>Closes the element that was opened last.</summary>
    public Markup Close()
    {
        _output.Append("</").Append(_open.Pop()).Append('>');
        return this;
    }

    /// <summary>Text of any origin.</summary>
    public Markup Text(string text)
    {
        _output.AppendEscaped(text);
        return this;
    }

    /// <summary>An element that holds a line of text.</summary>
    public Markup Line(string element, string text, params ReadOnlySpan<(string Name, string? Value)> attributes) =>
        Open(element, attributes).Text(text).Close();

    /// <summary>Markup that this library made: SVG, the page's own style and script. Never text of a panel.</summary>
    public Markup Made(string markup)
    {
        _output.Append(markup);
        return this;
    }

    /// <summary>The document.</summary>
    public override string ToString() => _output.ToString();

    private void WriteTag(string element, ReadOnlySpan<(string Name, string? Value)> attributes)
    {
        _output.Append('<').Append(element);
        foreach (var (name, value) in attributes)
        {
            if (value is null) continue;
            _output.Append(' ').Append(name).Append("=\"").AppendEscaped(value).Append('"');
        }

        _output.Append('>');
    }
}
