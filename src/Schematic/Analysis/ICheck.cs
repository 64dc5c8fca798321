using System.Collections.Immutable;
using Schematic.Diagnostics;

namespace Schematic.Analysis;

/// <summary>
/// One check: a pure function from the model to findings. To add one, write a class, its rule page
/// (<c>Diagnostics/Rules/RULE.md</c>), a file under <c>examples/wrong</c>, and name it in <see cref="PanelChecker"/>.
/// </summary>
public interface ICheck
{
    /// <summary>The rules whose findings it may give; each has a page.</summary>
    ImmutableArray<string> Rules { get; }

    /// <summary>When it runs.</summary>
    CheckStage Stage { get; }

    /// <summary>Gives the findings, in any stable order.</summary>
    IEnumerable<Diagnostic> Run(AnalysisContext context);
}
