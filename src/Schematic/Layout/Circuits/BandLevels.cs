using System.Collections.Immutable;

namespace Schematic.Layout.Circuits;

/// <summary>Finds the heights of the nodes of a band.</summary>
internal sealed class BandLevels(CircuitPlan plan, CircuitMeasures measures, HashSet<int> returns, HashSet<int> feeds, IReadOnlyDictionary<int, (int First, int Last)> spansOfAll)
{
    private const int MostRounds = 12;

    /// <summary>The heights for these shapes.</summary>
    /// <param name="links">The links of the band.</param>
    /// <param name="shaped">What is drawn of them.</param>
    /// <param name="fans">What is drawn of throws.</param>
    /// <param name="whole">
    /// The heights with all columns in one band: lines over the same columns keep their order, also where what lies between them
    /// stands in another band. Null while these are being found.
    /// </param>
    public Levels Of(ImmutableArray<PlacedLink> links, ImmutableArray<ShapedLink> shaped, ImmutableArray<ShapedFan> fans, Levels? whole)
    {
        var distances = new List<Distance>();
        foreach (var s in shaped) distances.Add(new Distance(s.Placed.Upper, s.Placed.Lower, s.Height));
        foreach (var fan in fans)
        {
            for (var i = 0; i < fan.Fan.Throws.Length; i++) distances.Add(new Distance(fan.Fan.Throws[i].Upper, fan.Fan.Throws[i].Lower, fan.HeightOf(i)));
        }

        var here = links.SelectMany(l => new[] { l.Upper, l.Lower }).ToHashSet();
        foreach (var (upper, lower) in plan.Gaps.Where(g => here.Contains(g.Upper) && here.Contains(g.Lower))) distances.Add(new Distance(upper, lower, measures.FreeGap));
        var low = LowNodes(links);
        ImmutableArray<int> bottoms = [.. returns.Where(here.Contains).Order()];
        var spans = Spans(links);
        var written = links.Select(l => l.Upper).Except(returns).ToHashSet();
        double PitchBelow(int line) => written.Contains(line) ? measures.LinePitch : measures.LinePitchBelowLettering;
        if (whole is not null) AddPitches(distances, whole, spans, double.MaxValue, PitchBelow);
        for (var round = 0; ; round++)
        {
            var levels = Settled(Levels.Of(distances, bottoms.Length > 1 && (round > 0 || whole is not null) ? [] : bottoms, low.Contains), shaped);
            if (whole is not null || round == MostRounds || !AddPitches(distances, levels, spans, measures.LinePitch, PitchBelow)) return levels;
        }
    }

    /// <summary>Ends that hang on a line stand close to it.</summary>
    private static Levels Settled(Levels levels, ImmutableArray<ShapedLink> shaped) => levels.With(shaped
        .Where(s => s.Placed.Link is { Kind: LinkKind.End, IsUpperEnd: false } or { Kind: LinkKind.End, Part: not Model.Board })
        .Select(s => s.Placed.Lower == s.Placed.Link.FromNode
            ? (s.Placed.Upper, levels[s.Placed.Lower] - s.Height)
            : (s.Placed.Lower, levels[s.Placed.Upper] + s.Height)));

    /// <summary>Loads stand in a row above the return: what they hang on, and everything below, is low.</summary>
    private HashSet<int> LowNodes(ImmutableArray<PlacedLink> links)
    {
        var low = links.Where(l => l.Link.Kind is LinkKind.Load or LinkKind.Diode or LinkKind.Resistor or LinkKind.Source)
            .Select(l => l.Upper).Where(n => !feeds.Contains(n)).Concat(returns).ToHashSet();
        var below = links.ToLookup(l => l.Upper, l => l.Lower);
        var waiting = new Stack<int>(low);
        while (waiting.TryPop(out var node))
        {
            foreach (var next in below[node].Where(low.Add)) waiting.Push(next);
        }

        return low;
    }

    /// <summary>The columns that each node meets and that its line passes, one more on a side where it goes on in another band.</summary>
    private Dictionary<int, (int First, int Last)> Spans(ImmutableArray<PlacedLink> links)
    {
        if (links.IsEmpty) return [];
        var (from, to) = (links.Min(l => l.Column) - 1, links.Max(l => l.Column) + 1);
        return links.SelectMany(l => new[] { (Node: l.Upper, l.Column), (Node: l.Lower, l.Column) }).DistinctBy(p => p.Node).ToDictionary(
            p => p.Node,
            p => spansOfAll.TryGetValue(p.Node, out var span) ? (Math.Max(from, span.First), Math.Min(to, span.Last)) : (p.Column, p.Column));
    }

    /// <summary>Lines of different nodes over the same columns keep apart where they are nearer than so much; returns whether a distance had to be added.</summary>
    private static bool AddPitches(List<Distance> distances, Levels levels, Dictionary<int, (int First, int Last)> spans, double near, Func<int, double> pitchBelow)
    {
        var known = distances.ToHashSet();
        // A node without a line must only stay on its own side of the lines that pass it, and that only where the order is known.
        var lines = spans.Where(s => s.Value.First < s.Value.Last || near == double.MaxValue).OrderBy(s => levels[s.Key]).ThenBy(s => s.Value.First).ThenBy(s => s.Key).ToList();
        var added = false;
        for (var i = 0; i < lines.Count; i++)
        {
            for (var k = i + 1; k < lines.Count && levels[lines[k].Key] - levels[lines[i].Key] < near - 1e-6; k++)
            {
                if (lines[i].Value.Last <= lines[k].Value.First || lines[k].Value.Last <= lines[i].Value.First) continue;
                if (lines[i].Value.First == lines[i].Value.Last && lines[k].Value.First == lines[k].Value.Last) continue;
                var distance = new Distance(lines[i].Key, lines[k].Key, pitchBelow(lines[i].Key));
                if (!known.Add(distance)) continue;
                distances.Add(distance);
                added = true;
            }
        }

        return added;
    }
}

/// <summary>Where the rows of contacts lie, and which contacts one linkage moves.</summary>
internal sealed class BandRows(Levels levels)
{
    /// <summary>The levels.</summary>
    public Levels Levels => levels;

    /// <summary>Where the body of a link begins.</summary>
    public double TopOf(ShapedLink s)
    {
        var upper = levels[s.Placed.Upper] + (s.Upper?.Height ?? 0);
        var lower = levels[s.Placed.Lower] - (s.Lower?.Height ?? 0) - s.Body!.Height;
        return IsDeep(s) ? lower : upper;
    }

    private static bool IsDeep(ShapedLink s) => s.Placed.Link.Kind is LinkKind.Load or LinkKind.Diode or LinkKind.Resistor or LinkKind.Source
        || (s.Placed.Link.Kind == LinkKind.End && s.Placed.Upper == s.Placed.Link.FromNode);

    /// <summary>Where the common of a fan lies.</summary>
    public double CommonOf(ShapedFan f) => levels[f.Fan.Node] + (f.Fan.IsDown ? f.Common.Height : -f.Common.Height);

    /// <summary>The height at which a linkage meets a contact.</summary>
    public double LinkageOf(ShapedLink s) => TopOf(s) + 5;

    /// <summary>The height at which a linkage meets a fan.</summary>
    public double LinkageOf(ShapedFan f) => CommonOf(f) + f.Shape.LinkageY;

    /// <summary>Whether the contact is moved by the linkage of the contact beside it on the left.</summary>
    public bool Shares(ShapedLink s, ImmutableArray<ShapedLink> all, ImmutableArray<PlacedLink> links) =>
        LeftOf(s, all, links) is not null;

    /// <summary>The fan of the same actuator on the left at the same height, opening the same way, with nothing between, or null.</summary>
    public ShapedFan? LeftOf(ShapedFan f, ImmutableArray<ShapedFan> all, ImmutableArray<PlacedLink> links)
    {
        if (f.Fan.Pole.Actuator is not { } name || f.Drive == Drive.Home) return null;
        var (y, column) = (LinkageOf(f), BandDrawing.MeetingOf(f).Column);
        var left = all.Where(o => o.Fan.IsDown == f.Fan.IsDown && o.Fan.Pole.Actuator == name && BandDrawing.MeetingOf(o).Column < column && Math.Abs(LinkageOf(o) - y) < 0.05)
            .MaxBy(o => BandDrawing.MeetingOf(o).Column);
        if (left is null) return null;
        // Their own throws pass between linkage and far ends only.
        var own = left.Fan.Throws.Concat(f.Fan.Throws).ToHashSet(ReferenceEqualityComparer.Instance);
        var isFree = !links.Any(l => !own.Contains(l) && l.Column > BandDrawing.MeetingOf(left).Column && l.Column < column && levels[l.Upper] < y && levels[l.Lower] > y);
        return isFree ? left : null;
    }

    /// <summary>The contact of the same actuator on the left at the same height with nothing between, or null.</summary>
    public ShapedLink? LeftOf(ShapedLink s, ImmutableArray<ShapedLink> all, ImmutableArray<PlacedLink> links)
    {
        if (s.Placed.Link.Pole?.Actuator is not { } name || s.Drive == Drive.Home) return null;
        var y = LinkageOf(s);
        var left = all.Where(o => o.Placed.Column < s.Placed.Column && o.Placed.Link.Pole?.Actuator == name && Math.Abs(LinkageOf(o) - y) < 0.05)
            .MaxBy(o => o.Placed.Column);
        if (left is null) return null;
        var isFree = !links.Any(l => l.Column > left.Placed.Column && l.Column < s.Placed.Column && levels[l.Upper] < y && levels[l.Lower] > y);
        return isFree ? left : null;
    }
}
