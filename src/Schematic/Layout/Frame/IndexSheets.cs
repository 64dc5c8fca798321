using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Layout.Tables;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Frame;

/// <summary>
/// What opens a pack: findings that are open, the list of sheets with the panel's notes and, where no sheet has room for them, all
/// cautions, and then where every part, terminal and wire is drawn. The lists flow on behind it, on the same sheet where there is
/// room.
/// </summary>
internal sealed class IndexSheets(Panel panel, SheetFrame frame, ReportTable? findings, IReadOnlyList<FlowBlock> lists, ImmutableArray<string> leftOut, PackWays? known = null)
{
    private const int SheetsWithoutList = 3;
    private const int MostRounds = 8;
    private const int MostAtPart = 4;
    private const string Title = "Index";
    private const string PlacesTitle = "Where everything is drawn";

    private BoxMm First => frame.ContentBox(SheetKind.Index);

    private BoxMm Behind => frame.ContentBox(SheetKind.Lists);

    /// <summary>
    /// The sheets that come before the drawings, none when an index is not needed, the drawings with the lists that found room on
    /// them, the lists that come behind, and the ways that were found.
    /// </summary>
    public (ImmutableArray<SheetContent> Front, ImmutableArray<SheetContent> Drawings, ImmutableArray<SheetContent> Behind, PackWays Ways) Build(
        IReadOnlyList<SheetContent> drawings)
    {
        var first = SheetFlow.Flow(lists, SheetKind.Lists, Behind, known: known?.Alone);
        ImmutableArray<SheetContent> alone = [.. first.Pages.Select(p => p.Content)];
        var cautionsAreElsewhere = drawings.Concat(alone).Any(c => frame.ShowsAllCautions(c.Kind));
        if (drawings.Count + alone.Length <= SheetsWithoutList && panel.Notes.IsEmpty && findings is null && leftOut.IsEmpty)
        {
            if (cautionsAreElsewhere) return ([], [.. drawings], alone, new PackWays(first.Way, null));
            // No index for the cautions alone: they stand in the free space of a drawing.
            var flowed = SheetFlow.Flow([new CautionBlock(Cautions.For(panel)), .. lists], SheetKind.Lists, Behind, drawings: Lent(drawings));
            if (flowed.Pages.Length <= alone.Length) return ([], flowed.Drawings, [.. flowed.Pages.Select(p => p.Content)], new PackWays(first.Way, null));
        }

        // The list of sheets counts the sheets that it stands on; its rows are of one height whatever they say, so that only
        // their number must settle. A row too many stays empty.
        var (front, count) = (1, drawings.Count + alone.Length + 1);
        var way = known?.Whole;
        for (var round = 0; ; round++)
        {
            var (pages, joined) = Flow(drawings, front, Enumerable.Repeat("", count), cautionsAreElsewhere, ref way, out var fronts);
            var needed = pages.Count + drawings.Count;
            if ((fronts == front && needed <= count) || round == MostRounds)
            {
                var titles = Titles(pages, front, joined);
                (pages, joined) = Flow(drawings, front, titles.Concat(Enumerable.Repeat("", Math.Max(0, count - titles.Count))), cautionsAreElsewhere, ref way, out _);
                return ([.. pages.Take(front).Select((p, i) => p with { Kind = SheetKind.Index, Title = titles[i], IsContinued = i > 0 })], joined, [.. pages.Skip(front)], new PackWays(first.Way, way));
            }

            (front, count) = (fronts, Math.Max(count, needed));
        }
    }

    /// <summary>Index and lists in one flow, and how many of its sheets hold the index.</summary>
    private (List<SheetContent> Pages, ImmutableArray<SheetContent> Drawings) Flow(
        IReadOnlyList<SheetContent> drawings, int front, IEnumerable<string> titles, bool cautionsAreElsewhere, ref FlowWay? way, out int fronts)
    {
        // A contact on a face is found with its connector, contacts of a switch or relay with their part.
        List<SheetContent> searched = [.. drawings.Select(c => c with { Things = [.. c.Things.Where(t => t.Thing is not { Kind: ThingKind.Terminal, Role: "face" }).Select(AsPart)] })];
        var places = new PlaceDirectory(searched.Select((c, i) => (front + i + 1, c)), frame.ZoneAt);
        IEnumerable<string> cautions = cautionsAreElsewhere ? [] : Cautions.For(panel).Skip(frame.CautionsShown(SheetKind.Index)).Select(c => "Caution: " + c);
        List<FlowBlock> index =
        [
            .. Tables(findings),
            new SheetList([.. titles], [.. panel.Notes, .. cautions, .. leftOut.IsEmpty ? [] : (string[])[$"Left out: {string.Join(", ", leftOut)}. 'draw --all-lists' prints them."]]) { IsLeading = true },
            .. Tables(Places(searched, places, lists.Any(b => b.Title == WireList.Title))),
        ];
        var flowed = SheetFlow.Flow([.. index, .. lists], SheetKind.Lists, Behind, First, Lent(drawings), way);
        way = flowed.Way;
        fronts = 1 + flowed.Pages.ToList().FindLastIndex(p => p.Blocks.Any(index.Contains));
        return ([.. flowed.Pages.Select(p => p.Content)], flowed.Drawings);
    }

    private static PlacedThing AsPart(PlacedThing placed) => placed.Thing.Kind == ThingKind.Contact
        ? placed with { Thing = Thing.Part(PartOf(placed.Thing.Name)) } : placed;

    /// <summary>The drawings, each with what a sheet of its kind may use.</summary>
    private IReadOnlyList<FlowDrawing> Lent(IEnumerable<SheetContent> drawings) => [.. drawings.Select(d => new FlowDrawing(d, frame.ContentBox(d.Kind)))];

    private IEnumerable<FlowBlock> Tables(ReportTable? table) => table is null ? [] : TableBlock.Of(table, First.Width, isLeading: true);

    /// <summary>An index sheet is called so, and after the lists that it holds besides.</summary>
    private static List<string> Titles(List<SheetContent> pages, int front, IEnumerable<SheetContent> drawings) =>
    [
        .. pages.Take(front).Select(p => string.Join(", ", p.Title.Split(", ")
            .Select(t => t == SheetList.Heading || t.StartsWith(PlacesTitle, StringComparison.Ordinal) ? Title : t).Distinct())),
        .. drawings.Select(d => d.Title),
        .. pages.Skip(front).Select(p => p.Title),
    ];

    /// <summary>Sheet and zone of every thing, runs of terminals that lie together drawn together.</summary>
    private static ReportTable? Places(IReadOnlyCollection<SheetContent> contents, PlaceDirectory places, bool hasWireList)
    {
        var things = contents.SelectMany(c => c.Things.Select(t => t.Thing with { Role = "" }))
            .Where(t => t.Kind is ThingKind.Part or ThingKind.Terminal or ThingKind.Cable or ThingKind.Actuator || (t.Kind == ThingKind.Wire && !hasWireList))
            .Distinct().OrderBy(t => OrderOf(t.Kind)).ThenBy(t => t.Name, NaturalOrder.Comparer)
            .Select(t => (t.Kind, t.Name, Where: places.EveryWords(t))).ToList();
        if (things.Count == 0) return null;
        var rows = Alike(things.Where(t => t.Kind != ThingKind.Terminal && t.Kind != ThingKind.Wire).Select(t => (t.Name, t.Where))).SelectMany(g => Lines("", NameList.Compact(g.Names)).SelectMany(names => Rows(names, g.Where)))
            .Concat(things.Where(t => t.Kind == ThingKind.Terminal).GroupBy(t => PartOf(t.Name)).Where(IsListed).SelectMany(p => p.GroupBy(t => t.Where)
                .SelectMany(g => Lines(p.Key + ":", NameList.Compact(g.Select(t => t.Name[(p.Key.Length + 1)..]))).SelectMany(names => Rows(names, g.Key)))))
            .Concat(things.Where(t => t.Kind == ThingKind.Wire).SelectMany(t => Rows(t.Name, t.Where)));
        return new ReportTable(PlacesTitle, [new("thing", "Name"), new("places", "Sheet/zone")], [.. rows])
        {
            IsDense = true,
            Notes = [$"Parts and actuators first, then terminals{(things.Exists(t => t.Kind == ThingKind.Wire) ? ", then wires" : "")}. A part of up to {MostAtPart} terminals has them at its symbol, a face its contacts. {(hasWireList ? "Wires: in number order in the wire list, with the places of both ends. " : "")}A zone is a row letter and a column number of the sheet's edge."],
        };
    }

    /// <summary>Whether the terminals of a part are looked for one by one: a contact on a connector's face always.</summary>
    private static bool IsListed<T>(IGrouping<string, T> terminals) => terminals.Count() > MostAtPart;

    /// <summary>A name and its places; many places take several rows, so that one long row does not make all of them wide.</summary>
    private static IEnumerable<ImmutableArray<string>> Rows(string name, string where)
    {
        const int most = 22;
        var line = "";
        foreach (var place in where.Split(", "))
        {
            if (line.Length > 0 && line.Length + 2 + place.Length > most)
            {
                yield return [name, line];
                line = "";
            }

            line += line.Length == 0 ? place : ", " + place;
        }

        yield return [name, line];
    }

    /// <summary>Neighbours in the order of names that are drawn in the same places.</summary>
    private static IEnumerable<(ImmutableArray<string> Names, string Where)> Alike(IEnumerable<(string Name, string Where)> things)
    {
        var names = ImmutableArray<string>.Empty;
        var last = "";
        foreach (var (name, where) in things)
        {
            if (names.Length > 0 && where != last)
            {
                yield return (names, last);
                names = [];
            }

            (names, last) = (names.Add(name), where);
        }

        if (names.Length > 0) yield return (names, last);
    }

    /// <summary>Names of the terminals of a part that lie together, in lines that the eye takes in at once.</summary>
    private static IEnumerable<string> Lines(string before, string names)
    {
        const int most = 14;
        var line = before;
        foreach (var name in names.Split(' '))
        {
            if (line.Length > before.Length && line.Length + 1 + name.Length > most)
            {
                yield return line;
                line = before;
            }

            line += line.Length == before.Length ? name : " " + name;
        }

        yield return line;
    }

    private static string PartOf(string terminal) => terminal[..terminal.LastIndexOf(':')];

    private static int OrderOf(ThingKind kind) => kind switch
    {
        ThingKind.Part or ThingKind.Actuator or ThingKind.Cable => 0,
        ThingKind.Terminal => 1,
        _ => 2,
    };
}
