using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Opens the readings files that a panel names; what stands in them is read at the bench.</summary>
internal sealed class ReadingsFiles(IPanelFiles files, BindingReporter report)
{
    /// <summary>The files that the main file names and that are there, in order.</summary>
    public ImmutableArray<KeptReadings> Open(IReadOnlyList<ScopedStatement> statements, Scope main)
    {
        var found = ImmutableArray.CreateBuilder<KeptReadings>();
        var named = statements.Where(s => s.Scope == main).Select(s => s.Syntax).OfType<SettingSyntax>()
            .SelectMany(s => s.Clauses).Where(c => c.Keyword == "readings").SelectMany(c => c.All<WordSyntax>());
        foreach (var path in named)
        {
            var span = main.At(path.Span);
            var file = files.Open(main.Source.FileName, path.Text);
            report.AddAll(file.Diagnostics);
            if (file.State == PanelFileState.Opened) found.Add(new KeptReadings(file.Text, span));
            else if (file.State == PanelFileState.Missing) report.MissingFile(span, path.Text);
            else if (file.State == PanelFileState.Outside) report.OutsideFolder(span, path.Text);
            else report.UnreadableFile(span, path.Text);
        }

        return found.DrainToImmutable();
    }
}
