using System.Collections.Immutable;
using Schematic.Text;
using Sprache;

namespace Schematic.Language;

/// <summary>Reads one file's statements with the grammar's parsers and turns their failures into findings.</summary>
internal sealed class StatementReader(SourceText source, SyntaxReporter report)
{
    /// <summary>The words of the file.</summary>
    public WordPool Words { get; } = new();

    /// <summary>Where faults are reported.</summary>
    public SyntaxReporter Report => report;

    /// <summary>
    /// Reads a stretch with a parser that should take all of it; null when it fails. <paramref name="usage"/> shows the
    /// statement as it should be.
    /// </summary>
    public T? Read<T>(Parser<T> parser, TextSpan span, string usage) where T : class
    {
        var (value, rest) = ReadStart(parser, span, usage);
        if (value is not null && rest.Length > 0) report.Problem(new SyntaxProblem(rest.Start, [], []), span, usage);
        return value;
    }

    /// <summary>Reads the start of a stretch, and says what is left of it.</summary>
    public (T? Value, TextSpan Left) ReadStart<T>(Parser<T> parser, TextSpan span, string usage) where T : class
    {
        var result = parser(new SliceInput(source.Content, span.Start, span.End, Words));
        var rest = Lexemes.Trim(result.Remainder).Position;
        if (result.WasSuccessful) return (result.Value, TextSpan.FromBounds(rest, span.End));
        report.Problem(new SyntaxProblem(rest, [.. result.Expectations], []), span, usage);
        return (null, default);
    }

    /// <summary>Reports what a run of clauses could not read, and gives its clauses.</summary>
    public ImmutableArray<ClauseSyntax> Accept(ClauseRun run, TextSpan span, string usage)
    {
        foreach (var problem in run.Problems) report.Problem(problem, span, usage);
        return run.Clauses;
    }

    /// <summary>The clauses of a block, its lines joined.</summary>
    public ImmutableArray<ClauseSyntax> Block(RawStatement statement, ClauseSet set, string usage)
    {
        if (statement.Block is null) return [];
        var clauses = ImmutableArray.CreateBuilder<ClauseSyntax>();
        foreach (var line in statement.Block)
        {
            clauses.AddRange(Accept(Read(set.Run, line.Head, usage)!, line.Head, usage));
            if (line.Block is null) continue;
            var keyword = clauses.Count == 0 ? "" : clauses[^1].Keyword;
            if (set.BlockOf(keyword) is not { } inner) report.UnexpectedBlock(new TextSpan(line.BlockStart, 1), usage);
            else clauses.AddRange(Lines(line, inner, usage));
        }

        return clauses.DrainToImmutable();
    }

    /// <summary>Reads each line of a block with the same parser; lines that fail are left away.</summary>
    public ImmutableArray<T> Lines<T>(RawStatement statement, Parser<T> parser, string usage) where T : class
    {
        if (statement.Block is null) return [];
        var lines = ImmutableArray.CreateBuilder<T>();
        foreach (var line in statement.Block)
        {
            if (line.Block is not null) report.UnexpectedBlock(new TextSpan(line.BlockStart, 1), usage);
            if (Read(parser, line.Head, usage) is { } value) lines.Add(value);
        }

        return lines.DrainToImmutable();
    }

    /// <summary>Reports a block where the statement has none.</summary>
    public void RefuseBlock(RawStatement statement, string usage)
    {
        if (statement.Block is not null && !statement.IsReported)
            report.UnexpectedBlock(new TextSpan(statement.BlockStart, 1), usage);
    }
}
