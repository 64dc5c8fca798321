using System.Collections.Immutable;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>A name that the panel declares, and what becomes known of it while it is bound.</summary>
internal sealed class Declared(string fullName, string kindWord, DeclaredKind kind, SourceSpan span)
{
    private HashSet<string>? _terminals;

    public string FullName => fullName;

    /// <summary>The keyword that declares it.</summary>
    public string KindWord => kindWord;

    public DeclaredKind Kind => kind;

    public SourceSpan Span => span;

    public Part? Part { get; private set; }

    public Actuator? Actuator { get; set; }

    /// <summary>Whether its terminals are not all known, because its statement has errors: a contact that it does
    /// not have is then passed over in silence.</summary>
    public bool IsIncomplete { get; set; } = kind == DeclaredKind.Unreadable;

    /// <summary>The terminal names in their order.</summary>
    public ImmutableArray<string> TerminalNames { get; private set; } = [];

    public void Set(Part part)
    {
        Part = part;
        TerminalNames = [.. part.Terminals.Select(t => t.Name)];
        _terminals = new HashSet<string>(TerminalNames, StringComparer.Ordinal);
    }

    public bool HasTerminal(string name) => _terminals?.Contains(name) ?? false;

    /// <summary>Article and kind, for messages.</summary>
    public string Article => kindWord switch
    {
        "actuator" => "an actuator",
        "led" => "an LED",
        "terminals" => "a terminal strip",
        "poles" or "pole" or "switch" => "a switch",
        _ => $"a {kindWord}",
    };
}
