using System.Collections.Immutable;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Faces;

/// <summary>
/// Everything the face sheets show of one connector: both views, the words that belong to them, the contact table and the
/// soldering order, arranged in the lowest way that fits the room, on one page or more.
/// </summary>
internal sealed class FaceCard
{
    private const double Gap = 4;

    private const double NoteWidthMm = 100;

    private readonly Connector _connector;
    private readonly ImmutableArray<ContactUse> _uses;
    private readonly double _width;
    private readonly double _height;
    private readonly FaceFit _fit;
    private readonly TableFlow _contacts;
    private readonly TableFlow _soldering;

    public FaceCard(Connector connector, ImmutableArray<ContactUse> uses, double width, double height)
        : this(connector, uses, width, height, FaceFit.For(connector, uses, width, height - HeadRoomMm))
    {
    }

    private FaceCard(Connector connector, ImmutableArray<ContactUse> uses, double width, double height, FaceFit fit)
    {
        (_connector, _uses, _width, _height, _fit) = (connector, uses, width, height, fit);
        _contacts = new TableFlow(FaceTables.Contacts(connector, uses));
        _soldering = new TableFlow(FaceTables.Soldering(connector, uses, _fit.Scale.KeyDegrees));
    }

    /// <summary>Heading, captions and notes around the views.</summary>
    private static double HeadRoomMm => 31;

    /// <summary>The whole card with the largest lettering, for a connector that has a sheet to itself; null where it does not fit.</summary>
    public Block? Enlarged() =>
        new FaceCard(_connector, _uses, _width, _height, FaceFit.Largest(_connector, _uses)).Whole();

    /// <summary>The pages of this connector, each no larger than the room.</summary>
    public ImmutableArray<Block> Pages()
    {
        var whole = Whole();
        return whole is not null ? [whole] : Paged();
    }

    private Block? Whole()
    {
        if (_fit.IsSplit) return null;
        Block? best = null;
        foreach (var candidate in new[] { Views(sideBySide: true), Views(sideBySide: false) }.SelectMany(Candidates))
        {
            if (candidate.Width > _width + 1e-6 || candidate.Height > _height + 1e-6) continue;
            if (best is null || candidate.Height < best.Height - 1) best = candidate;
        }

        return best;
    }

    /// <summary>The table beside or below the views, the notes under the views or under everything.</summary>
    private IEnumerable<Block> Candidates(Block views)
    {
        var noted = WithNotes(views);
        Block?[] withoutNotes = [TableBeside(views), TableBelow(views)];
        Block?[] bodies =
        [
            TableBeside(noted), TableBelow(noted),
            .. withoutNotes.Select(b => b is null ? null : Block.Stack(Gap, b, Notes(_width))),
        ];
        return bodies.Where(b => b is not null).Select(b => Block.Stack(Gap, Heading(""), b!));
    }

    private Block? TableBeside(Block views)
    {
        var (table, next) = _contacts.Take(0, _width - views.Width - Gap, _height, views.Height);
        if (next < _contacts.Count) return null;
        Block?[] choices =
        [
            WithSoldering(views.Width, list => Block.Row(Gap, Block.Stack(Gap, views, list), table)),
            WithSoldering(table.Width, list => Block.Row(Gap, views, Block.Stack(Gap, table, list))),
            WithSoldering(_width, list => Block.Stack(Gap, Block.Row(Gap, views, table), list)),
            WithSoldering(_width - views.Width - table.Width - (2 * Gap), list => Block.Row(Gap, views, table, list)),
        ];
        return choices.Where(c => c is not null && c.Width <= _width + 1e-6).MinBy(c => c!.Height);
    }

    private Block? TableBelow(Block views)
    {
        var (table, next) = _contacts.Take(0, _width, _height);
        if (next < _contacts.Count) return null;
        return WithSoldering(_width, list => Block.Stack(Gap, views, table, list));
    }

    /// <summary>What <paramref name="arrange"/> makes of the whole soldering list at that width, or null when there is no room.</summary>
    private Block? WithSoldering(double width, Func<Block, Block> arrange)
    {
        if (_soldering.IsEmpty) return arrange(Block.Empty);
        var (list, next) = _soldering.Take(0, width, _height);
        return next < _soldering.Count ? null : arrange(Titled(list, width));
    }

    private Block Titled(Block list, double width) => Block.Stack(
        1.5, FaceText.Lines(FaceTables.SolderingTitle(_connector), FaceText.MainMm, width, bold: true), list);

    private Block Views(bool sideBySide)
    {
        var (front, rear) = new FaceViewDrawing(_connector, _uses, _fit.Scale).DrawBoth();
        return sideBySide ? Block.Row(Gap * 2, front, rear) : Block.Centred(Gap, front, rear);
    }

    private Block WithNotes(Block views) => Block.Stack(3, views, Notes(Math.Max(views.Width, NoteWidthMm)));

    private Block Notes(double width) => Block.Stack(
        0.9, FaceWords.Notes(_connector, _uses, _fit.Scale).Select(n => FaceText.Lines(n, FaceText.QuietMm, width)));

    private Block Heading(string more)
    {
        var name = FaceText.Lines(
            FaceText.NameOf(_connector) + more, FaceText.HeadingMm, _width, bold: true, owner: _connector.Designator);
        var data = FaceText.Lines(FaceText.DataOf(_connector), FaceText.MainMm, _width, owner: _connector.Designator);
        return name.Width + Gap + data.Width <= _width ? Block.Level(Gap, name, data) : Block.Stack(1.2, name, data);
    }

    /// <summary>Views first, with as much of the table beside them as goes; then the table; then the soldering order.</summary>
    private ImmutableArray<Block> Paged()
    {
        var pages = ImmutableArray.CreateBuilder<Block>();
        var next = _fit.IsSplit ? AddSplitViews(pages) : AddViews(pages);
        next = AddRows(pages, _contacts, next, title: null);
        if (!_soldering.IsEmpty) AddRows(pages, _soldering, 0, FaceTables.SolderingTitle(_connector));
        return pages.ToImmutable();
    }

    private int AddSplitViews(ImmutableArray<Block>.Builder pages)
    {
        var (front, rear) = new FaceViewDrawing(_connector, _uses, _fit.Scale).DrawBoth();
        pages.Add(Block.Stack(Gap, Heading(""), WithNotes(front)));
        pages.Add(Block.Stack(Gap, Heading(" (continued)"), rear));
        return 0;
    }

    private int AddViews(ImmutableArray<Block>.Builder pages)
    {
        var heading = Heading("");
        Block[] choices = [WithNotes(Views(sideBySide: true)), WithNotes(Views(sideBySide: false))];
        var views = choices.Where(v => v.Width <= _width && v.Height + heading.Height + Gap <= _height)
            .DefaultIfEmpty(choices[0]).MinBy(v => v.Width)!;
        var (table, next) = _contacts.Take(0, _width - views.Width - Gap, _height - heading.Height - Gap);
        pages.Add(Block.Stack(Gap, heading, Block.Row(Gap, views, table)));
        return next;
    }

    /// <summary>Puts rows below what the last page has, or on further pages with the heading again.</summary>
    private int AddRows(ImmutableArray<Block>.Builder pages, TableFlow flow, int from, string? title)
    {
        var next = from;
        while (next < flow.Count)
        {
            var titleBlock = title is null ? Block.Empty : FaceText.Lines(title, FaceText.MainMm, _width, bold: true);
            var top = titleBlock.Marks.IsEmpty ? 0 : titleBlock.Height + 1.5;
            var room = _height - pages[^1].Height - Gap - top;
            var (block, after) = flow.Take(next, _width, room);
            var whole = after == flow.Count;
            if (!whole) (block, after) = flow.Take(next, _width, _height - Heading("").Height - Gap - top);
            if (!whole) pages.Add(Heading(" (continued)"));
            pages[^1] = Block.Stack(Gap, pages[^1], Block.Stack(1.5, titleBlock, block));
            next = after;
        }

        return next;
    }
}
