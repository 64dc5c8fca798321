using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Bench.Record;
using Schematic.Drawing;
using Schematic.Layout.Shapes;
using Schematic.Layout.Tables;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Faces;

/// <summary>
/// The sheet of one connector: the wire side as large as the sheet allows, about 110 mm across, the mating side smaller, both at
/// true size where there is room, the contacts in order and the order of soldering. Two halves that mate share it: the wire side
/// of the other half shows where the contacts lie on the mating side of the first.
/// </summary>
internal sealed class FacePage(
    AnalysisContext context, FaceHalf main, FaceHalf? mate, ImmutableDictionary<TerminalId, ContactProof> proofs, BoxMm box)
{
    // Sizes of the wire side, across, from the wanted one down. "About 110 mm" is our choice: numbers and colours read at arm's length.
    private static readonly double[] AcrossMm = [110, 102, 94, 86, 78, 70];

    // How much of the sheet's width a face that is cut into parts may take.
    private static readonly double[] PartShares = [1, 0.62, 0.5, 0.4];

    // The mating side is for finding the contact, not for soldering: half as large where its numbers find room.
    private const double LeastShare = 0.5;
    private const double HeadMm = 30;

    /// <summary>A legend below a view is broken into lines of this width, or as wide as the view.</summary>
    private const double LeastLegendMm = 60;

    /// <summary>True size with its views below or beside each other; all notes on the sheet, or those alone that explain its marks.</summary>
    private static readonly (bool IsBroad, bool AllNotes)[] Tries = [(false, true), (true, true), (false, false), (true, false)];

    private readonly ReportTable _soldering = FaceTables.Soldering(context, main.Connector);
    private readonly ImmutableArray<FlowBlock> _contacts = [.. TableBlock.Of(FaceTables.Contacts(main, mate), box.Width)];
    private readonly ImmutableArray<FlowBlock> _together = [.. TableBlock.Of(FaceTables.Together(context, main, mate), box.Width)];
    private readonly FlowShapes _shapes = SheetFlow.ShapesOnOne(box);

    // The same blocks are tried in many orders: each is drawn and measured once.
    private readonly Dictionary<(FaceScale Scale, bool IsRear, bool HasLegend), FlowBlock> _views = [];
    private readonly Dictionary<bool, ImmutableArray<FlowBlock>> _trueSizes = [];
    private readonly Dictionary<(FaceScale Scale, FaceLettering Second, bool AllNotes, bool HasLegend), FlowBlock> _notes = [];
    private ImmutableArray<FlowBlock> _ends;
    private ImmutableArray<FlowBlock> _shortEnds;
    private ImmutableArray<FlowBlock> _matesEnds;

    private Connector Connector => main.Connector;

    private FaceHalf Second => mate ?? main;

    /// <summary>The sheets, whether they show the connector at true size, and the notes that found no room there.</summary>
    public (ImmutableArray<SheetContent> Sheets, bool HasTrueSize, FlowBlock? Notes) Build()
    {
        _matesEnds = mate is null ? [] : Table(FaceTables.Soldering(context, mate.Connector));
        _ends = [.. Table(_soldering), .. _matesEnds];
        _shortEnds = _soldering.Rows.IsEmpty ? [] : [.. Table(FaceTables.WithoutFarEnds(_soldering)), .. _matesEnds];
        var scales = AcrossMm.Select(ScaleAt).OfType<FaceScale>().DistinctBy(s => Math.Round(s.Factor, 6)).ToList();
        var isUsual = scales.Count > 0;
        // A face too long for the sheet is cut into parts, into more of them where that leaves a column for the tables.
        if (!isUsual) scales = [.. PartShares.Select(s => FaceFit.For(Connector, main.Uses, s * box.Width, box.Height - HeadMm).Scale).DistinctBy(s => (s.Factor, s.Parts))];
        var pairs = scales.Select(s => (Rear: s, Matings: FaceLettering.NumbersOnly.Select(l => MatingScale(s, l)).ToArray())).ToList();
        foreach (var (isTogether, withTrueSize, mating) in Contents())
        {
            foreach (var (rear, matings) in pairs)
            {
                if (OnOne(rear, matings[mating], withTrueSize, isTogether) is var (sheet, hasNotes)) return ([sheet], withTrueSize, hasNotes ? null : new NoteBlock($"Notes on {string.Join(", ", Halves.Select(h => h.Name))}", [.. FurtherNotes]));
            }
        }

        return (isUsual ? Flow(pairs[0].Rear, pairs[0].Matings[0]) : Smallest(), false, null);
    }

    /// <summary>What a single sheet may hold, the best first: two tables and the true size, the true size elsewhere, one table for contacts and work.</summary>
    private IEnumerable<(bool IsTogether, bool WithTrueSize, int Mating)> Contents()
    {
        foreach (var (isTogether, withTrueSize) in ((bool, bool)[])[(false, true), (false, false), (true, false)])
        {
            if (isTogether && _soldering.Rows.IsEmpty) continue;
            for (var mating = 0; mating < FaceLettering.NumbersOnly.Length; mating++) yield return (isTogether, withTrueSize, mating);
        }
    }

    private ImmutableArray<FlowBlock> Table(ReportTable table) => table.Rows.IsEmpty ? [] : [.. TableBlock.Of(table with { Notes = [] }, box.Width)];

    /// <summary>A face too large for any of the usual sizes: drawn as large as the sheet leaves room for below its words.</summary>
    private ImmutableArray<SheetContent> Smallest()
    {
        const double step = 6;
        for (var head = HeadMm; ; head += step)
        {
            var fit = FaceFit.For(Connector, main.Uses, box.Width, box.Height - head);
            var sheets = Flow(fit.Scale, mate is null ? fit.Scale : MatingScale(fit.Scale, FaceLettering.NumbersOnly[0]));
            if (sheets.All(IsInside) || head + (2 * step) > box.Height) return sheets;
        }
    }

    private bool IsInside(SheetContent sheet)
    {
        const double tolerance = 0.01;
        return sheet.Marks.All(m => m.Bounds.Right <= box.Right + tolerance && m.Bounds.Bottom <= box.Bottom + tolerance);
    }

    /// <summary>The largest lettering that fits a face of that size, the face then drawn as large; null where none fits.</summary>
    private FaceScale? ScaleAt(double across)
    {
        foreach (var lettering in FaceLettering.Choices.Take(2))
        {
            var scale = FaceScale.For(Connector, main.Uses, lettering, turned: false);
            var (width, height) = scale.SizeOf(Connector);
            // A long face may be twice as long as a round one is wide.
            var grow = new[] { across / Math.Max(height, width / 2), box.Width / width, (box.Height - HeadMm) / height }.Min();
            if (grow >= 1 - 1e-9) return scale.Shrunk(grow);
        }

        return null;
    }

    private (SheetContent Sheet, bool HasNotes)? OnOne(FaceScale scale, FaceScale matingScale, bool withTrueSize, bool isTogether)
    {
        foreach (var (isBroad, allNotes) in withTrueSize ? Tries : Tries.Where(t => !t.IsBroad))
        {
            var (rear, mating, trueSize, notes) = Blocks(scale, matingScale, withTrueSize, isBroad, allNotes);
            IReadOnlyList<FlowBlock>[] orders = isTogether ?
            [
                [rear, .. _together, .. _matesEnds, mating, notes],
                [rear, mating, .. _together, .. _matesEnds, notes],
                [rear, mating, notes, .. _together, .. _matesEnds],
            ]
            :
            [
                [rear, .. _contacts, .. _ends, mating, .. trueSize, notes],
                [rear, .. trueSize, .. _ends, .. _contacts, mating, notes],
                [rear, mating, .. _contacts, .. _ends, .. trueSize, notes],
                [rear, .. _contacts, .. trueSize, .. _ends, mating, notes],
            ];
            // Where room is short the wire list alone tells the far ends.
            IReadOnlyList<FlowBlock>[] shorter = _shortEnds.IsEmpty || isTogether ? [] : [[rear, .. _contacts, .. _shortEnds, mating, .. trueSize, notes]];
            if (SheetFlow.OnOne(SheetKind.Faces, box, _shapes, [.. orders, .. shorter]) is { } sheet) return (Finished(sheet), allNotes);
        }

        return null;
    }

    private ImmutableArray<SheetContent> Flow(FaceScale scale, FaceScale matingScale)
    {
        var usual = Flow(scale, matingScale, [.. _contacts, .. _ends]);
        if (usual.Length == 1 || _soldering.Rows.IsEmpty) return usual;
        // Contacts and work in one table where that takes fewer sheets.
        var together = Flow(scale, matingScale, [.. _together, .. _matesEnds]);
        return together.Length < usual.Length ? together : usual;
    }

    private ImmutableArray<SheetContent> Flow(FaceScale scale, FaceScale matingScale, ImmutableArray<FlowBlock> tables)
    {
        var (rear, mating, _, notes) = Blocks(scale, matingScale, withTrueSize: false, isBroad: false, allNotes: true);
        var sheets = SheetFlow.Build([rear, mating, .. tables, notes], SheetKind.Faces, box);
        if (!sheets.All(SaysItsSigns))
        {
            // The notes stand on the last sheet: each view then says itself what its signs mean.
            (rear, mating, _, notes) = Blocks(scale, matingScale, withTrueSize: false, isBroad: false, allNotes: true, legendAtViews: true);
            sheets = SheetFlow.Build([rear, mating, .. tables, notes], SheetKind.Faces, box);
        }

        return [.. sheets.Select(Finished)];
    }

    private string Title => $"Faces of {string.Join(" and ", Halves.Select(h => h.Name))}";

    /// <summary>What need not be read while the iron is hot.</summary>
    private IEnumerable<string> FurtherNotes => [.. FaceWords.Numbering(Connector), .. _soldering.Rows.IsEmpty ? [] : _soldering.Notes.Take(FaceTables.NotesBesideFace)];

    private IEnumerable<FaceHalf> Halves => mate is null ? [main] : [main, mate];

    private bool HasSigns => proofs.Keys.Any(t => Halves.Any(h => h.Name == t.Part));

    private bool SaysItsSigns(SheetContent sheet) => !HasSigns
        || !sheet.Marks.Any(m => m is CircleMark { Role: MarkRole.Face, Owner: not null } && Halves.All(h => h.Name != m.Owner))
        || sheet.Marks.OfType<TextMark>().Any(t => ProofSign.Legend.StartsWith(t.Text, StringComparison.Ordinal));

    private SheetContent Finished(SheetContent sheet) => sheet with
    {
        Title = Title, Things = [.. Halves.SelectMany(h => ThingsOn(sheet, h.Name))],
    };

    private (FlowBlock Rear, FlowBlock Mating, ImmutableArray<FlowBlock> TrueSize, FlowBlock Notes) Blocks(
        FaceScale scale, FaceScale matingScale, bool withTrueSize, bool isBroad, bool allNotes, bool legendAtViews = false) => (
        Kept(_views, (scale, true, legendAtViews), () => RearOf(scale, legendAtViews)),
        Kept(_views, (matingScale, false, legendAtViews), () => SecondOf(matingScale, legendAtViews)),
        withTrueSize ? Kept(_trueSizes, isBroad, () => [.. TrueSizeCard.Pieces(Connector, isBroad, box, mate?.Connector)
            .Concat(mate is null ? [] : TrueSizeCard.Panel(mate.Connector, box)).Select(p => new FaceBlock(p.Title, p.Picture))]) : [],
        Kept(_notes, (scale, matingScale.Lettering, allNotes, legendAtViews), () => NotesOf(scale, matingScale.Lettering, allNotes, legendAtViews)));

    private static T Kept<TKey, T>(Dictionary<TKey, T> kept, TKey key, Func<T> make)
        where TKey : notnull => kept.TryGetValue(key, out var known) ? known : kept[key] = make();

    private FaceBlock RearOf(FaceScale scale, bool hasLegend)
    {
        var view = new FaceViewDrawing(Connector, main.Uses, proofs, scale).Draw(FaceWords.RearOf(Connector));
        IEnumerable<Block> above = mate is null ? [Data(main, view.Width)] : [Data(main, view.Width), Alike(mate, view.Width)];
        return new FaceBlock($"{FaceText.NameOf(Connector)}, wire side", Block.Stack(1.5, [.. above, hasLegend ? WithLegend(view) : view])) { IsLeading = true };
    }

    /// <summary>The mating side or, of two halves, the wire side of the other.</summary>
    private FaceBlock SecondOf(FaceScale scale, bool hasLegend)
    {
        var second = Second.Connector;
        var view = new FaceViewDrawing(second, Second.Uses, proofs, scale).Draw(mate is null ? FaceWords.FrontOf(second) : FaceWords.RearOf(second));
        var drawn = hasLegend ? WithLegend(view) : view;
        return mate is null
            ? new FaceBlock($"{main.Name}, mating side", drawn)
            : new FaceBlock($"{FaceText.NameOf(second)}, wire side", Block.Stack(1.5, Data(mate, view.Width), Alike(main, view.Width), drawn));
    }

    private static Block WithLegend(Block view) =>
        Block.Stack(1.5, view, FaceText.Lines(ProofSign.Legend, FaceText.MainMm, Math.Max(view.Width, LeastLegendMm)));

    private NoteBlock NotesOf(FaceScale scale, FaceLettering second, bool allNotes, bool legendAtViews) => new(
        "Notes",
        [
            .. FaceWords.Marks(Halves.Select(h => h.Connector), main.Uses, scale, second),
            .. HasSigns && !legendAtViews ? new[] { ProofSign.Legend } : [], .. allNotes ? FurtherNotes : [],
        ]);

    private static Block Data(FaceHalf half, double width) =>
        FaceText.Lines(FaceText.DataOf(half.Connector), FaceText.MainMm, Math.Max(width, LeastLegendMm), owner: half.Name);

    /// <summary>That the mating side of the other half looks as this view does.</summary>
    private static Block Alike(FaceHalf other, double width) =>
        FaceText.Lines($"The mating side of {other.Name} looks the same.", FaceText.MainMm, Math.Max(width, LeastLegendMm), owner: other.Name);

    /// <summary>The mating side, or the wire side of the other half, with numbers alone, smaller where they find room.</summary>
    private FaceScale MatingScale(FaceScale rear, FaceLettering lettering)
    {
        var least = FaceScale.For(Second.Connector, Second.Uses, lettering, rear.IsTurned, rear.Parts);
        if (least.Factor > rear.Factor) return mate is null ? rear : least.Shrunk(rear.Factor / least.Factor) with { Lettering = rear.Lettering };
        return least.Shrunk(Math.Max(1, Math.Min(LeastShare, 1) * rear.Factor / least.Factor));
    }

    private static ImmutableArray<PlacedThing> ThingsOn(SheetContent sheet, string connector)
    {
        var faces = sheet.Marks.Where(m => m.Role == MarkRole.Face && m.Owner == connector).Select(m => m.Bounds).ToList();
        if (faces.Count == 0) return [];
        var face = faces.MaxBy(b => b.Width * b.Height);
        var contacts = sheet.Marks.OfType<CircleMark>().Where(m => m.Role == MarkRole.Face && m.Owner is not null && m.Owner != connector && face.Contains(m.Bounds))
            .GroupBy(m => m.Owner!).Select(g => new PlacedThing(Thing.Terminal(g.Key, "face"), g.First().Bounds));
        return [new PlacedThing(Thing.Part(connector, "face"), face), .. contacts];
    }
}
