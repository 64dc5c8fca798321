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
/// true size where there is room, the contacts in order and the order of soldering.
/// </summary>
internal sealed class FacePage(
    AnalysisContext context, Connector connector, ImmutableArray<ContactUse> uses, ImmutableDictionary<TerminalId, ContactProof> proofs, BoxMm box)
{
    // Sizes of the wire side, across, from the wanted one down. "About 110 mm" is our choice: numbers and colours read at arm's length.
    private static readonly double[] AcrossMm = [110, 102, 94, 86, 78, 70];

    // The mating side is for finding the contact, not for soldering: half as large where its numbers find room.
    private const double LeastShare = 0.5;
    private const double HeadMm = 30;

    /// <summary>A legend below a view is broken into lines of this width, or as wide as the view.</summary>
    private const double LeastLegendMm = 60;

    /// <summary>True size with its views below or beside each other, notes as large as tables or as remarks are.</summary>
    private static readonly (bool IsBroad, double NoteMm)[] Tries = [(false, FaceText.MainMm), (true, FaceText.MainMm), (false, FaceText.QuietMm), (true, FaceText.QuietMm)];

    private readonly ReportTable _soldering = FaceTables.Soldering(context, connector);
    private readonly ImmutableArray<FlowBlock> _contacts = [.. TableBlock.Of(FaceTables.Contacts(connector, uses), box.Width)];
    private readonly FlowShapes _shapes = SheetFlow.ShapesOnOne(box);

    // The same blocks are tried in many orders: each is drawn and measured once.
    private readonly Dictionary<(FaceScale Scale, bool IsRear, bool HasLegend), FlowBlock> _views = [];
    private readonly Dictionary<bool, ImmutableArray<FlowBlock>> _trueSizes = [];
    private readonly Dictionary<(FaceScale Scale, double LetterMm, bool HasLegend), FlowBlock> _notes = [];
    private ImmutableArray<FlowBlock> _ends;
    private ImmutableArray<FlowBlock> _shortEnds;

    /// <summary>The sheets, and whether they show the connector at true size.</summary>
    public (ImmutableArray<SheetContent> Sheets, bool HasTrueSize) Build()
    {
        _ends = _soldering.Rows.IsEmpty ? [] : [.. TableBlock.Of(_soldering with { Notes = [] }, box.Width)];
        _shortEnds = _soldering.Rows.IsEmpty ? [] : [.. TableBlock.Of(FaceTables.WithoutFarEnds(_soldering) with { Notes = [] }, box.Width)];
        var scales = AcrossMm.Select(ScaleAt).OfType<FaceScale>().DistinctBy(s => Math.Round(s.Factor, 6))
            .Select(s => (Rear: s, Matings: FaceLettering.NumbersOnly.Select(l => MatingScale(s, l)).ToArray())).ToList();
        foreach (var (withTrueSize, mating) in ((bool, int)[])[(true, 0), (true, 1), (false, 0), (false, 1)])
        {
            foreach (var (rear, matings) in scales)
            {
                if (OnOne(rear, matings[mating], withTrueSize) is { } sheet) return ([sheet], withTrueSize);
            }
        }

        if (scales.Count > 0) return (Flow(scales[0].Rear, scales[0].Matings[0]), false);
        return (Smallest(), false);
    }

    /// <summary>A face too large for any of the usual sizes: drawn as large as the sheet leaves room for below its words.</summary>
    private ImmutableArray<SheetContent> Smallest()
    {
        const double step = 6;
        for (var head = HeadMm; ; head += step)
        {
            var fit = FaceFit.For(connector, uses, box.Width, box.Height - head);
            var sheets = Flow(fit.Scale, fit.Scale);
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
            var scale = FaceScale.For(connector, uses, lettering, turned: false);
            var (width, height) = scale.SizeOf(connector);
            // A long face may be twice as long as a round one is wide.
            var grow = new[] { across / Math.Max(height, width / 2), box.Width / width, (box.Height - HeadMm) / height }.Min();
            if (grow >= 1 - 1e-9) return scale.Shrunk(grow);
        }

        return null;
    }

    private SheetContent? OnOne(FaceScale scale, FaceScale matingScale, bool withTrueSize)
    {
        foreach (var (isBroad, noteMm) in withTrueSize ? Tries : Tries.Where(t => !t.IsBroad))
        {
            var (rear, mating, trueSize, notes) = Blocks(scale, matingScale, withTrueSize, isBroad, noteMm);
            IReadOnlyList<FlowBlock>[] orders =
            [
                [rear, .. _contacts, .. _ends, mating, .. trueSize, notes],
                [rear, .. trueSize, .. _ends, .. _contacts, mating, notes],
                [rear, mating, .. _contacts, .. _ends, .. trueSize, notes],
                [rear, .. _contacts, .. trueSize, .. _ends, mating, notes],
            ];
            // Where room is short the wire list alone tells the far ends.
            IReadOnlyList<FlowBlock>[] shorter = _shortEnds.IsEmpty ? [] : [[rear, .. _contacts, .. _shortEnds, mating, .. trueSize, notes]];
            if (SheetFlow.OnOne(SheetKind.Faces, box, _shapes, [.. orders, .. shorter]) is { } sheet) return Finished(sheet);
        }

        return null;
    }

    private ImmutableArray<SheetContent> Flow(FaceScale scale, FaceScale matingScale)
    {
        var (rear, mating, _, notes) = Blocks(scale, matingScale, withTrueSize: false, isBroad: false, FaceText.QuietMm);
        var sheets = SheetFlow.Build([rear, mating, .. _contacts, .. _ends, notes], SheetKind.Faces, box);
        if (!sheets.All(SaysItsSigns))
        {
            // The notes stand on the last sheet: each view then says itself what its signs mean.
            (rear, mating, _, notes) = Blocks(scale, matingScale, withTrueSize: false, isBroad: false, FaceText.QuietMm, legendAtViews: true);
            sheets = SheetFlow.Build([rear, mating, .. _contacts, .. _ends, notes], SheetKind.Faces, box);
        }

        return [.. sheets.Select(Finished)];
    }

    private bool HasSigns => proofs.Keys.Any(t => t.Part == connector.Designator);

    private bool SaysItsSigns(SheetContent sheet) => !HasSigns
        || !sheet.Marks.Any(m => m is CircleMark { Role: MarkRole.Face, Owner: not null } && m.Owner != connector.Designator)
        || sheet.Marks.OfType<TextMark>().Any(t => ProofSign.Legend.StartsWith(t.Text, StringComparison.Ordinal));

    private SheetContent Finished(SheetContent sheet) => sheet with { Title = $"Faces of {connector.Designator}", Things = ThingsOn(sheet) };

    private (FlowBlock Rear, FlowBlock Mating, ImmutableArray<FlowBlock> TrueSize, FlowBlock Notes) Blocks(
        FaceScale scale, FaceScale matingScale, bool withTrueSize, bool isBroad, double noteMm, bool legendAtViews = false) => (
        Kept(_views, (scale, true, legendAtViews), () => RearOf(scale, legendAtViews)),
        Kept(_views, (matingScale, false, legendAtViews), () => MatingOf(matingScale, legendAtViews)),
        withTrueSize ? Kept(_trueSizes, isBroad, () => [.. TrueSizeCard.Pieces(connector, isBroad, box).Select(p => new FaceBlock(p.Title, p.Picture))]) : [],
        Kept(_notes, (scale, noteMm, legendAtViews), () => NotesOf(scale, noteMm, legendAtViews)));

    private static T Kept<TKey, T>(Dictionary<TKey, T> kept, TKey key, Func<T> make)
        where TKey : notnull => kept.TryGetValue(key, out var known) ? known : kept[key] = make();

    private FaceBlock RearOf(FaceScale scale, bool hasLegend)
    {
        var view = new FaceViewDrawing(connector, uses, proofs, scale).Draw(FaceWords.RearOf(connector));
        return new FaceBlock($"{FaceText.NameOf(connector)}, wire side", Block.Stack(1.5, Data(view.Width), hasLegend ? WithLegend(view) : view)) { IsLeading = true };
    }

    private FaceBlock MatingOf(FaceScale scale, bool hasLegend)
    {
        var view = new FaceViewDrawing(connector, uses, proofs, scale).Draw(FaceWords.FrontOf(connector));
        return new FaceBlock($"{connector.Designator}, mating side", hasLegend ? WithLegend(view) : view);
    }

    private static Block WithLegend(Block view) =>
        Block.Stack(1.5, view, FaceText.Lines(ProofSign.Legend, FaceText.QuietMm, Math.Max(view.Width, LeastLegendMm)));

    private NoteBlock NotesOf(FaceScale scale, double letterMm, bool legendAtViews) => new(
        "Notes",
        [
            .. FaceWords.Notes(connector, uses, scale), .. HasSigns && !legendAtViews ? new[] { ProofSign.Legend } : [],
            .. _soldering.Rows.IsEmpty ? [] : _soldering.Notes.Take(FaceTables.NotesBesideFace),
        ],
        letterMm);

    private Block Data(double width) =>
        FaceText.Lines(FaceText.DataOf(connector), FaceText.MainMm, Math.Max(width, 60), owner: connector.Designator);

    /// <summary>The mating side with numbers alone, smaller where they find room.</summary>
    private FaceScale MatingScale(FaceScale rear, FaceLettering lettering)
    {
        var least = FaceScale.For(connector, uses, lettering, turned: false).Factor / rear.Factor;
        return least > 1 ? rear : rear.Shrunk(Math.Max(least, Math.Min(LeastShare, 1))) with { Lettering = lettering };
    }

    private ImmutableArray<PlacedThing> ThingsOn(SheetContent sheet)
    {
        var faces = sheet.Marks.Where(m => m.Role == MarkRole.Face && m.Owner == connector.Designator).Select(m => m.Bounds).ToList();
        if (faces.Count == 0) return [];
        var face = faces.MaxBy(b => b.Width * b.Height);
        var contacts = sheet.Marks.OfType<CircleMark>().Where(m => m.Role == MarkRole.Face && m.Owner is not null && m.Owner != connector.Designator && face.Contains(m.Bounds))
            .GroupBy(m => m.Owner!).Select(g => new PlacedThing(Thing.Terminal(g.Key, "face"), g.First().Bounds));
        return [new PlacedThing(Thing.Part(connector.Designator, "face"), face), .. contacts];
    }
}
