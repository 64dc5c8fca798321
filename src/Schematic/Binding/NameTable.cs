using Schematic.Language;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>All names of the panel. Parts, actuators, cables and wires share one set of names; nets have their own.</summary>
internal sealed class NameTable(BindingReporter report)
{
    private readonly Dictionary<string, Declared> _byName = new(StringComparer.Ordinal);
    private readonly HashSet<string> _lacking = new(StringComparer.Ordinal);
    private readonly Dictionary<string, SourceSpan> _nets = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Declared>> _inScope = new(StringComparer.Ordinal);

    /// <summary>Declares a name; a second declaration is reported and gives null.</summary>
    public Declared? Declare(Scope scope, string name, TextSpan span, string kindWord, DeclaredKind kind)
    {
        var declared = new Declared(scope.Full(name), kindWord, kind, scope.At(span));
        if (!_byName.TryAdd(declared.FullName, declared))
        {
            if (kind != DeclaredKind.Unreadable) report.DuplicateName(declared.Span, name, _byName[declared.FullName].Span);
            return null;
        }

        if (kind == DeclaredKind.Wire) return declared;
        for (var prefix = declared.FullName; prefix.Length > 0;)
        {
            var dot = prefix.LastIndexOf('.');
            prefix = dot < 0 ? "" : prefix[..dot];
            var key = prefix.Length == 0 ? "" : prefix + ".";
            if (!_inScope.TryGetValue(key, out var inside)) _inScope.Add(key, inside = []);
            inside.Add(declared);
        }

        return declared;
    }

    /// <summary>Declares a net; a second one of that name is reported.</summary>
    public bool DeclareNet(Scope scope, WordSyntax name)
    {
        var full = scope.Full(name.Text);
        if (_nets.TryAdd(full, scope.At(name.Span))) return true;
        report.DuplicateName(scope.At(name.Span), name.Text, _nets[full]);
        return false;
    }

    /// <summary>Takes note that the file behind a prefix could not be read: what bears the prefix is not reported as well.</summary>
    public void Lack(string prefix) => _lacking.Add(prefix);

    private bool IsOfUnreadFile(Scope scope, string name)
    {
        for (var dot = name.IndexOf('.'); dot > 0; dot = name.IndexOf('.', dot + 1))
        {
            if (_lacking.Contains(scope.Full(name[..dot]))) return true;
        }

        return false;
    }

    /// <summary>What a statement declared, found again by the place of its name; null for the second of two.</summary>
    public Declared? Own(Scope scope, string name, TextSpan span) =>
        _byName.TryGetValue(scope.Full(name), out var declared) && declared.Span == scope.At(span) ? declared : null;

    /// <summary>What a name stands for, or null when nothing was declared under it.</summary>
    public Declared? Find(Scope scope, string name) => _byName.GetValueOrDefault(scope.Full(name));

    /// <summary>What a name stands for; null, and a finding, when it stands for nothing or for something of no use here.</summary>
    public Declared? Resolve(Scope scope, WordSyntax name, string needed, Func<Declared, bool> fits)
    {
        if (Find(scope, name.Text) is not { } declared)
        {
            if (IsOfUnreadFile(scope, name.Text)) return null;
            var inside = _inScope.GetValueOrDefault(scope.Prefix) ?? [];
            report.UnknownName(
                scope.At(name.Span), name.Text, needed, inside.Where(fits).Select(d => d.FullName[scope.Prefix.Length..]));
            return null;
        }

        if (declared.Kind == DeclaredKind.Unreadable || fits(declared)) return declared;
        report.WrongKind(scope.At(name.Span), name.Text, declared.Article, needed, declared.Span);
        return null;
    }

    /// <summary>The part of that name.</summary>
    public Declared? ResolvePart(Scope scope, WordSyntax name) => Resolve(scope, name, "a part", d => d.Kind == DeclaredKind.Part);

    /// <summary>The actuator of that name.</summary>
    public Declared? ResolveActuator(Scope scope, WordSyntax name) =>
        Resolve(scope, name, "an actuator", d => d.Kind == DeclaredKind.Actuator);

    /// <summary>
    /// The contacts that a part has, in the order asked for, and null for those it has not: one finding for all of them.
    /// </summary>
    public IReadOnlyList<string?> Contacts(Scope scope, Declared part, WordSyntax partName, IReadOnlyList<string> contacts, TextSpan span)
    {
        var known = new List<string?>(contacts.Count);
        var unknown = new List<string>();
        foreach (var contact in contacts)
        {
            var isThere = part.HasTerminal(contact);
            known.Add(isThere ? contact : null);
            if (!isThere && !part.IsIncomplete) unknown.Add(contact);
        }

        if (unknown.Count > 0) report.UnknownContact(scope.At(span), partName.Text, unknown, part.TerminalNames, part.Span);
        return known;
    }
}
