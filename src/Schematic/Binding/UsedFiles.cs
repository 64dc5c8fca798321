using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>Reads the main file and the files it uses, each once, and lays their statements out in order.</summary>
internal sealed class UsedFiles(IPanelFiles files, BindingReporter report, IReadOnlyList<PanelSyntax>? before = null)
{
    /// <summary>More uses than this in all are taken for files that use each other many times over.</summary>
    private const int MostUses = 1000;

    private const int DeepestUse = 32;

    /// <summary>More statements than this in one panel, used files counted each time, were not written by a person.</summary>
    public const int MostStatements = 200_000;

    private bool _isFull;

    private readonly Dictionary<string, PanelSyntax> _read = new(StringComparer.Ordinal);
    private readonly List<PanelSyntax> _inOrder = [];
    private readonly List<UsedFile> _used = [];
    private readonly List<ScopedStatement> _statements = [];
    private readonly List<string> _chain = [];
    private readonly List<string> _lacking = [];
    private int _uses;

    /// <summary>The prefixes of files that could not be read.</summary>
    public IReadOnlyList<string> Lacking => _lacking;

    /// <summary>Every file that was read, the main file first.</summary>
    public ImmutableArray<PanelSyntax> Syntaxes => [.. _inOrder];

    /// <summary>Which use statement took in which file.</summary>
    public ImmutableArray<UsedFile> Used => [.. _used];

    /// <summary>
    /// All statements, those of a used file at the place of its use statement; the use statements themselves stay, to declare
    /// the prefix.
    /// </summary>
    public IReadOnlyList<ScopedStatement> Read(SourceText main, Scope scope)
    {
        var syntax = Parse(main);
        _read[main.FileName] = syntax;
        _inOrder.Add(syntax);
        report.AddAll(syntax.Diagnostics);
        Add(syntax, scope);
        return _statements;
    }

    private void Add(PanelSyntax syntax, Scope scope)
    {
        _chain.Add(syntax.Source.FileName);
        foreach (var statement in syntax.Statements)
        {
            if (_statements.Count == MostStatements)
            {
                if (!_isFull) report.TooManyStatements(scope.At(statement.Keyword.Span), MostStatements);
                _isFull = true;
                break;
            }

            _statements.Add(new ScopedStatement(scope, statement));
            if (statement is UseSyntax use) Follow(use, scope);
        }

        _chain.RemoveAt(_chain.Count - 1);
    }

    /// <summary>A text that is being edited is compared with the version before; another is read as it is.</summary>
    private PanelSyntax Parse(SourceText text)
    {
        if (before is null) return PanelParser.Parse(text);
        var earlier = before.FirstOrDefault(b => b.Source.FileName == text.FileName);
        return earlier is not null && ReferenceEquals(earlier.Source, text) ? earlier : PanelParser.ParseNext(text, earlier);
    }

    private void Follow(UseSyntax use, Scope scope)
    {
        var span = scope.At(use.Path.Span);
        if (_uses == MostUses)
        {
            report.TooManyUses(span, MostUses);
            return;
        }

        _uses++;
        if (Open(use, scope, span) is not { } syntax)
        {
            _lacking.Add(scope.Full(use.Name.Text));
            return;
        }

        if (_chain.IndexOf(syntax.Source.FileName) is var start and >= 0)
        {
            report.UseCycle(span, [.. _chain.Skip(start), syntax.Source.FileName]);
            return;
        }

        _used.Add(new UsedFile(span, syntax.Source.FileName, scope.Full(use.Name.Text) + "."));
        if (_chain.Count < DeepestUse) Add(syntax, new Scope(syntax.Source, scope.Full(use.Name.Text) + "."));
        else report.TooManyUses(span, DeepestUse);
    }

    private PanelSyntax? Open(UseSyntax use, Scope scope, SourceSpan span)
    {
        var file = files.Open(scope.Source.FileName, use.Path.Text);
        switch (file.State)
        {
            case PanelFileState.Missing:
                report.MissingFile(span, use.Path.Text);
                return null;
            case PanelFileState.Outside:
                report.OutsideFolder(span, use.Path.Text);
                return null;
            case PanelFileState.Unreadable:
                report.UnreadableFile(span, use.Path.Text);
                return null;
        }

        if (_read.TryGetValue(file.Text.FileName, out var known)) return known;
        var syntax = Parse(file.Text);
        _read.Add(file.Text.FileName, syntax);
        _inOrder.Add(syntax);
        report.AddAll(file.Diagnostics);
        report.AddAll(syntax.Diagnostics);
        return syntax;
    }
}
