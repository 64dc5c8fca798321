using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Layout.Pack;
using Schematic.Model;

namespace Schematic.Page;

/// <summary>What a page is made of.</summary>
/// <param name="Panel">The panel.</param>
/// <param name="Findings">What was found in it; they are listed on the page, and an error stamps it.</param>
public sealed record PageRequest(Panel Panel, ImmutableArray<Diagnostic> Findings)
{
    /// <summary>What the check of the panel has found out already; null when it has to be found out.</summary>
    public AnalysisContext? Context { get; init; }

    /// <summary>The sheets, where they are drawn already.</summary>
    public DrawnPack? Pack { get; init; }

    /// <summary>The panel file's name without a folder: readings that the page saves name it.</summary>
    public string FileName { get; init; } = "panel.panel";

    /// <summary>A script behind the page's own, such as one that asks a server for news; empty for none.</summary>
    public string AddedScript { get; init; } = "";

    /// <summary>Whether scripts may talk to the server that the page came from. A page in a file talks to nobody.</summary>
    public bool ConnectsToItsServer { get; init; }
}
