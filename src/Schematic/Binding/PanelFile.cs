using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>The answer to a request for a file.</summary>
/// <param name="State">Whether it was opened, or why not.</param>
/// <param name="Text">The text; empty when it was not opened.</param>
/// <param name="Diagnostics">What is wrong with its bytes.</param>
public sealed record PanelFile(PanelFileState State, SourceText Text, ImmutableArray<Diagnostic> Diagnostics)
{
    /// <summary>A file that could not be opened.</summary>
    public static PanelFile Not(PanelFileState state, string shownName) => new(state, new SourceText(shownName, ""), []);

    /// <summary>A file that was opened. Its name identifies it: two paths to one file give one name.</summary>
    public static PanelFile Opened(SourceText text, params ImmutableArray<Diagnostic> diagnostics) =>
        new(PanelFileState.Opened, text, diagnostics);
}
