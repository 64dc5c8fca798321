using System.Collections.Immutable;
using System.Globalization;
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
internal sealed class IndexSheets(Panel panel, SheetFrame frame, ReportTable? findings, IReadOnlyList<FlowBlock> lists)
{
    private const int SheetsWithoutList = 3;
    private const int MostRounds = 8;
    private const string Title = "Index";
    private const string PlacesTitle = "Where everything is drawn";

    private BoxMm First => frame.ContentBox(SheetKind.Index);

    private BoxMm Behind => frame.ContentBox(SheetKind.Lists);

    /// <summary>The sheets that come before the drawings, none when an index is not needed, and the lists that come behind them.</summary>
    public (ImmutableArray<SheetContent> Front, ImmutableArray<SheetContent> Behind) Build(IReadOnlyCollection<SheetContent> drawings)
    {
        var alone = SheetFlow.Build(lists, SheetKind.Lists, Behind);
        var cautionsAreElsewhere = drawings.Concat(alone).Any(c => frame.ShowsAllCautions(c.Kind));
        if (drawings.Count + alone.Length <= SheetsWithoutList && panel.Notes.IsEmpty && cautionsAreElsewhere && findings is null) return ([], alone);

        // The list of sheets counts the sheets that it stands on; its rows are of one height whatever they say, so that only
        // their number must settle. A row too many stays empty.
        var (front, count) = (1, drawings.Count + alone.Length + 1);
        for (var round = 0; ; round++)
        {
            var pages = Flow(drawings, front, Enumerable.Repeat("", count), cautionsAreElsewhere, out var fronts);
            var needed = pages.Count + drawings.Count;
            if ((fronts == front && needed <= count) || round == MostRounds)
            {
                var titles = Titles(pages, front, drawings);
                pages = Flow(drawings, front, titles.Concat(Enumerable.Repeat("", Math.Max(0, count - titles.Count))), cautionsAreElsewhere, out _);
                return ([.. pages.Take(front).Select((p, i) => p with { Kind = SheetKind.Index, Title = titles[i], IsContinued = i > 0 })], [.. pages.Skip(front)]);
            }

            (front, count) = (fronts, Math.Max(count, needed));
        }
    }

    /// <summary>Index and lists in one flow, and how many of its sheets hold the index.</summary>
    private List<SheetContent> Flow(
        IReadOnlyCollection<SheetContent> drawings, int front, IEnumerable<string> titles, bool cautionsAreElsewhere, out int fronts)
    {
        var places = new PlaceDirectory(drawings.Select((c, i) => (front + i + 1, c)), frame.ZoneAt);
        IEnumerable<string> cautions = cautionsAreElsewhere ? [] : Cautions.For(panel).Select(c => "Caution: " + c);
        List<FlowBlock> index =
        [
            .. Tables(findings),
            new SheetList([.. titles], [.. panel.Notes, .. cautions]) { IsLeading = true },
            .. Tables(Places(drawings, places)),
        ];
        var pages = SheetFlow.Flow([.. index, .. lists], SheetKind.Lists, Behind, First);
        fronts = 1 + pages.ToList().FindLastIndex(p => p.Blocks.Any(index.Contains));
        return [.. pages.Select(p => p.Content)];
    }

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
    private static ReportTable? Places(IReadOnlyCollection<SheetContent> contents, PlaceDirectory places)
    {
        var things = contents.SelectMany(c => c.Things.Select(t => t.Thing with { Role = "" }))
            .Where(t => t.Kind is ThingKind.Part or ThingKind.Terminal or ThingKind.Wire or ThingKind.Cable or ThingKind.Actuator)
            .Distinct().OrderBy(t => OrderOf(t.Kind)).ThenBy(t => t.Name, NaturalOrder.Comparer)
            .Select(t => (t.Name, Group: GroupOf(t), Where: string.Join(", ", places.Every(t)))).ToList();
        if (things.Count == 0) return null;
        var rows = new List<ImmutableArray<string>>();
        for (var i = 0; i < things.Count;)
        {
            var run = i + 1;
            while (run < things.Count && things[run].Where == things[i].Where && Follows(things[run - 1], things[run])) run++;
            var name = run - i == 1 ? things[i].Name
                : $"{things[i].Name}{(run - i == 2 ? "," : "..")}{things[run - 1].Name[(things[i].Group.Length + 1)..]}";
            rows.Add([name, things[i].Where]);
            i = run;
        }

        return new ReportTable(PlacesTitle, [new("thing", "Name"), new("places", "Sheet/zone")], [.. rows])
        {
            Notes = ["Parts and actuators first, then terminals, then wires. A zone is a row letter and a column number of the sheet's edge."],
        };
    }

    private static int OrderOf(ThingKind kind) => kind switch
    {
        ThingKind.Part or ThingKind.Actuator or ThingKind.Cable => 0,
        ThingKind.Terminal => 1,
        _ => 2,
    };

    /// <summary>Whether a terminal is the next of the same part.</summary>
    private static bool Follows((string Name, string Group, string Where) one, (string Name, string Group, string Where) next) =>
        one.Group.Length > 0 && one.Group == next.Group && Number(one.Name) is { } n && Number(next.Name) == n + 1
        && one.Name.TrimEnd(Digits) == next.Name.TrimEnd(Digits);

    private static readonly char[] Digits = [.. "0123456789"];

    private static long? Number(string name) =>
        name.Length - name.TrimEnd(Digits).Length is > 0 and < 10 and var digits ? long.Parse(name.AsSpan(name.Length - digits), CultureInfo.InvariantCulture) : null;

    /// <summary>The part of a terminal: its terminals may be drawn together.</summary>
    private static string GroupOf(Thing thing) =>
        thing.Kind == ThingKind.Terminal && thing.Name.LastIndexOf(':') is > 0 and var colon ? thing.Name[..colon] : "";
}
