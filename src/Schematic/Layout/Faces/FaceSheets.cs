using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Faces;

/// <summary>
/// The connector sheets, one for each connector: both faces, what each contact is for and the soldering order; then sheets for
/// those whose true size found no room there.
/// </summary>
public static class FaceSheets
{
    /// <summary>The sheets of all connectors of a panel, in the order of the file; none when there are no connectors.</summary>
    public static ImmutableArray<SheetContent> Build(Panel panel, SheetFrame frame) =>
        Build(panel, [.. panel.Parts.OfType<Connector>()], frame);

    /// <summary>The sheets of one connector.</summary>
    public static ImmutableArray<SheetContent> Build(Panel panel, Connector connector, SheetFrame frame) =>
        Build(panel, [connector], frame);

    private static ImmutableArray<SheetContent> Build(Panel panel, ImmutableArray<Connector> connectors, SheetFrame frame)
    {
        var (context, uses) = (new AnalysisContext(panel), new ContactUses(panel));
        var pages = connectors.Select(c => (Connector: c, Page: new FacePage(context, c, uses.Of(c), frame.ContentBox(SheetKind.Faces)).Build())).ToList();
        ImmutableArray<Connector> others = [.. pages.Where(p => !p.Page.HasTrueSize).Select(p => p.Connector)];
        return
        [
            .. pages.SelectMany(p => p.Page.Sheets),
            .. others.IsEmpty ? [] : TrueSizeSheets.Build(others, frame.ContentBox(SheetKind.TrueSize)),
        ];
    }
}
