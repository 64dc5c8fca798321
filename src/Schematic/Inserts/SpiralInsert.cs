using System.Collections.Immutable;

namespace Schematic.Inserts;

/// <summary>
/// Concentric rings, numbered ring after ring: what the trade calls a spiral. The numbering may begin at the centre or at the
/// rim and run either way; the trade has all four, so the drawing always states which holds.
/// </summary>
/// <param name="Count">How many contacts there are.</param>
public sealed record SpiralInsert(int Count) : InsertBuilder
{
    /// <summary>Distance of neighbouring contacts where no radii are given: size 20 contacts stand about this far apart.</summary>
    private const double UsualSpacingMm = 3.3;

    /// <summary>A ring of at most this many contacts, outside a fuller ring, fills a gap and is not spread around.</summary>
    private const int FillerLimit = 4;

    /// <summary>
    /// Contacts of each ring in the order of numbering: from the centre out or from the rim in, as <see cref="FromRim"/> says.
    /// Filler contacts between rings are rings of few. Empty: derived from the count.
    /// </summary>
    public ImmutableArray<int> Rings { get; init; } = [];

    /// <summary>Whether the numbering begins at the rim; null when not stated (then it begins at the centre).</summary>
    public bool? FromRim { get; init; }

    /// <summary>Whether the numbering runs clockwise on <see cref="Face"/>; null when not stated (then it does).</summary>
    public bool? Clockwise { get; init; }

    /// <summary>The face that direction and start angles are meant for; null when not stated (then the front of the pins).</summary>
    public FaceView? Face { get; init; }

    /// <summary>
    /// Angle of the first contact of each ring, in the order of <see cref="Rings"/>, in degrees clockwise from the key on
    /// <see cref="Face"/>. Empty: half a step past the key, so that the key stands between the last and the first contact.
    /// </summary>
    public ImmutableArray<double> StartDegrees { get; init; } = [];

    /// <summary>Radius of each ring in millimetres, in the order of <see cref="Rings"/>; empty: as close as contacts go.</summary>
    public ImmutableArray<double> RadiiMm { get; init; } = [];

    /// <summary>Least distance of neighbouring contacts where no radii are given, in millimetres.</summary>
    public double? SpacingMm { get; init; }

    /// <inheritdoc/>
    protected override string Family => "spiral";

    /// <inheritdoc/>
    protected override InsertOutline UsualOutline => InsertOutline.Round;

    /// <inheritdoc/>
    protected override bool HasGuideLine => true;

    private bool StartsAtRim => FromRim ?? false;

    private bool RunsClockwise => Clockwise ?? true;

    private FaceView OnFace => Face ?? FaceView.FrontOfPins;

    /// <summary>
    /// The ring counts taken when none are given, from the centre out: full rings that grow by six, around a core of one to
    /// five contacts; of the cores the one whose outermost ring misses the fewest contacts or holds one more than full.
    /// Packing arithmetic, no standard.
    /// </summary>
    public static ImmutableArray<int> DeriveRings(int count)
    {
        ImmutableArray<int> best = [];
        var leastOff = int.MaxValue;
        for (var core = 1; core <= Math.Min(5, count); core++)
        {
            var rings = GrowRings(core, count);
            var missing = rings.Sum() - count;
            if (Math.Abs(missing) >= leastOff) continue;
            leastOff = Math.Abs(missing);
            best = rings.SetItem(rings.Length - 1, rings[^1] - missing);
        }

        return best;
    }

    private static ImmutableArray<int> GrowRings(int core, int count)
    {
        var rings = new List<int> { core };
        var sum = core;
        while (sum < count - 1)
        {
            var next = rings[^1] == 1 ? 6 : rings[^1] + 6;
            rings.Add(next);
            sum += next;
        }

        return [.. rings];
    }

    private protected override ImmutableArray<(double X, double Y)> Layout(ImmutableArray<InsertProblem>.Builder problems)
    {
        Check(problems);
        if (problems.Count > 0) return [];
        var rings = EffectiveRings();
        var outward = StartsAtRim ? [.. rings.Reverse()] : rings;
        var starts = StartsAtRim ? [.. StartDegrees.Reverse()] : StartDegrees;
        var radii = StartsAtRim ? [.. RadiiMm.Reverse()] : RadiiMm;
        var laid = new List<ImmutableArray<(double X, double Y)>>();
        var radius = 0.0;
        for (var i = 0; i < outward.Length; i++)
        {
            var filler = IsFiller(outward, i);
            double? given = starts.IsEmpty ? null : starts[i];
            radius = radii.IsEmpty ? CloseRadius(outward[i], filler, given, radius, laid) : radii[i];
            laid.Add(RingOf(outward[i], filler, given, radius));
        }

        if (StartsAtRim) laid.Reverse();
        return [.. laid.SelectMany(r => r)];
    }

    private protected override string ConventionFor(string first)
    {
        var rings = EffectiveRings();
        var innermost = StartsAtRim ? rings[^1] : rings[0];
        var where = StartsAtRim ? "at the rim" : innermost == 1 ? "at the centre" : "in the innermost ring";
        var sense = RunsClockwise ? "clockwise" : "counter-clockwise";
        var way = rings.Length == 1 ? "" : StartsAtRim ? " inward" : " outward";
        var derived = Rings.IsEmpty ? $"; rings derived from the count: {string.Join(' ', rings)}" : "";
        var assumed = Assumed();
        return $"{first} {where}, {sense}{way}, on the {OnFace.Words()}{derived}{(assumed.Length > 0 ? $"; {assumed} assumed, not stated" : "")}";
    }

    private string Assumed() => string.Join(" and ", new[]
    {
        FromRim is null ? "start" : null,
        Clockwise is null ? "direction" : null,
        Face is null ? "face" : null,
    }.Where(w => w is not null));

    private ImmutableArray<int> EffectiveRings()
    {
        if (!Rings.IsEmpty) return Rings;
        var derived = DeriveRings(Count);
        return StartsAtRim ? [.. derived.Reverse()] : derived;
    }

    private void Check(ImmutableArray<InsertProblem>.Builder problems)
    {
        if (Count is < 1 or > MaxContacts)
        {
            problems.Add(new($"A spiral has 1 to {MaxContacts} contacts, not {Count}.", "Count the contacts on the insert."));
            return;
        }

        CheckRings(problems);
        CheckLength(SpacingMm, "pitch", problems);
        var rings = Rings.IsEmpty ? EffectiveRings().Length : Rings.Length;
        if (!StartDegrees.IsEmpty && StartDegrees.Length != rings)
        {
            problems.Add(new(
                $"{StartDegrees.Length} start angles are given for {rings} rings.",
                "Give one start angle for each ring, in the order of the rings, or none."));
        }

        if (!RadiiMm.IsEmpty && RadiiMm.Length != rings)
        {
            problems.Add(new(
                $"{RadiiMm.Length} radii are given for {rings} rings.",
                "Give one radius for each ring, in the order of the rings, or none."));
        }

        if (RadiiMm.Any(r => r < 0 || !double.IsFinite(r)))
            problems.Add(new("A ring's radius is below zero.", "Give radii in millimetres from the centre of the insert."));
    }

    private void CheckRings(ImmutableArray<InsertProblem>.Builder problems)
    {
        if (Rings.IsEmpty) return;
        if (Rings.Any(r => r < 1))
        {
            problems.Add(new("A ring has at least one contact.", "Leave empty rings away."));
            return;
        }

        var sum = Rings.Sum(r => (long)r);
        if (sum != Count)
        {
            problems.Add(new(
                $"The rings {string.Join(' ', Rings)} add up to {sum}, not to {Count}.",
                "Count the contacts of each ring again, fillers between rings included."));
        }

        var (first, last, most) = (Rings[0], Rings[^1], Rings.Max());
        var backwards = first != last && (StartsAtRim ? last == most : first == most);
        if (!backwards) return;
        problems.Add(new(
            $"The rings {string.Join(' ', Rings)} begin at the {(StartsAtRim ? "rim" : "centre")}, "
            + $"and the {(StartsAtRim ? "innermost" : "outermost")} ring then holds {last} of them.",
            $"List the rings in the order of numbering: {string.Join(' ', Rings.Reverse())}."));
    }

    private static bool IsFiller(ImmutableArray<int> outward, int ring) =>
        ring > 0 && outward[ring] <= FillerLimit && outward[ring] < outward[ring - 1];

    /// <summary>The smallest radius, no smaller than the ring inside, at which no contact comes too close to another.</summary>
    private double CloseRadius(
        int count, bool filler, double? start, double inner, List<ImmutableArray<(double X, double Y)>> laid)
    {
        var spacing = SpacingMm ?? Math.Max(UsualSpacingMm, LargestDiameter() * 1.5);
        if (laid.Count == 0 && count == 1) return 0;
        var radius = filler || count == 1 ? inner : Math.Max(inner, spacing / (2 * Math.Sin(Math.PI / count)));
        var taken = laid.SelectMany(r => r).ToArray();
        while (!IsClear(RingOf(count, filler, start, radius), taken, spacing)) radius += spacing / 50;
        return radius;
    }

    private double LargestDiameter() => OtherDiametersMm.Values.Append(DiameterMm ?? 0).Max();

    private static bool IsClear(
        ImmutableArray<(double X, double Y)> ring, (double X, double Y)[] taken, double spacing)
    {
        var least = (spacing * spacing) - 1e-9;
        return ring.All(p => taken.All(t => ((p.X - t.X) * (p.X - t.X)) + ((p.Y - t.Y) * (p.Y - t.Y)) >= least));
    }

    private ImmutableArray<(double X, double Y)> RingOf(int count, bool filler, double? startDegrees, double radius)
    {
        var step = filler ? FillerStep(radius) : 360.0 / count;
        var sense = RunsClockwise ? 1 : -1;
        var usual = filler || count == 1 ? -(count - 1) / 2.0 * step : step / 2;
        var start = startDegrees ?? sense * usual;
        var places = ImmutableArray.CreateBuilder<(double X, double Y)>(count);
        for (var i = 0; i < count; i++)
        {
            var (x, y) = Circle.At(start + (sense * i * step), radius);
            places.Add(FromFace(OnFace, x, y));
        }

        return places.MoveToImmutable();
    }

    /// <summary>Fillers stand side by side, one spacing apart, astride the key.</summary>
    private double FillerStep(double radius)
    {
        var spacing = SpacingMm ?? Math.Max(UsualSpacingMm, LargestDiameter() * 1.5);
        return 2 * Math.Asin(Math.Min(1, spacing / (2 * Math.Max(radius, spacing)))) * 180 / Math.PI;
    }
}
