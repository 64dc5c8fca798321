using System.Collections.Immutable;
using System.Globalization;
using Schematic.Bench.Readings;
using Schematic.Model;

namespace Schematic.Bench.Learning;

/// <summary>The next placement at an unknown unit.</summary>
/// <param name="Stand">Where the actuators are held.</param>
/// <param name="Test">How the meter is set.</param>
/// <param name="Red">Under the red lead.</param>
/// <param name="Black">Under the black lead.</param>
/// <param name="Why">What it is to tell.</param>
public sealed record LearnStep(Stand Stand, MeterTest Test, ImmutableArray<TerminalId> Red, ImmutableArray<TerminalId> Black, string Why);

/// <summary>
/// Says in which order to measure an unknown unit. At rest each contact is put against a bundle of those already told apart; where
/// something passes the bundle is halved until the partner is found. Then each actuator is moved alone: joints found at
/// rest are tried again, and whatever may have closed is looked for by halves. Diodes come last, both ways at once.
/// </summary>
public sealed class LearnPlanner
{
    private readonly Knowledge _known;
    private readonly Stand _rest;
    private readonly int _count;

    private LearnPlanner(Knowledge known)
    {
        _known = known;
        _rest = Stand.Rest(known.Actuators);
        _count = known.Contacts.Length;
    }

    /// <summary>The placement to make after these readings, or null when nothing is left to be found.</summary>
    public static LearnStep? Next(BenchReadings readings) => new LearnPlanner(new Knowledge(readings)).Next();

    /// <summary>How many placements all pairs in all positions, one actuator moved at a time, would take.</summary>
    public static long AllPairs(Panel declared)
    {
        var contacts = declared.Parts.OfType<Connector>().Sum(c => c.Terminals.Length);
        return (long)contacts * (contacts - 1) / 2 * (1 + declared.Actuators.Sum(a => a.Positions.Length - 1));
    }

    private LearnStep? Next()
    {
        if (AtRest(_known.At(_rest)) is { } step) return step;
        foreach (var stand in Moved())
            if (Away(_known.At(stand)) is { } moved) return moved;
        return Diodes(_known.At(_rest));
    }

    /// <summary>Each position of each actuator, the others at rest, in the order of the positions.</summary>
    private IEnumerable<Stand> Moved()
    {
        for (var i = 0; i < _known.Actuators.Length; i++)
            for (var p = 0; p < _known.Actuators[i].Positions.Length; p++)
                if (2 * p != _rest.Places[i]) yield return _rest.With(i, 2 * p);
    }

    private LearnStep? AtRest(StandKnowledge at)
    {
        if (Narrow(at) is { } narrower) return narrower;
        var told = new List<int>();
        for (var contact = 0; contact < _count; contact++)
        {
            if (at.GroupOf(contact) != contact) continue;
            var open = told.Where(t => at.Between(contact, t) == Relation.Unknown).ToList();
            if (open.Count > 0) return Step(at.Stand, MeterTest.Ohms, [contact], open, "whether it is joined to any of those told apart so far");
            told.Add(contact);
        }

        return null;
    }

    /// <summary>With an actuator moved: what was joined at rest, then what may have closed.</summary>
    private LearnStep? Away(StandKnowledge at)
    {
        var rest = _known.At(_rest);
        for (var contact = 0; contact < _count; contact++)
        {
            var head = rest.GroupOf(contact);
            if (head != contact && at.Between(head, contact) == Relation.Unknown)
                return Step(at.Stand, MeterTest.Ohms, [head], [contact], "whether what is joined at rest still is");
        }

        return Narrow(at) ?? Devices(at, rest) ?? Halved(at, rest);
    }

    /// <summary>What hangs together through devices at rest, by as few readings as join it again: a contact may have closed across one.</summary>
    private LearnStep? Devices(StandKnowledge at, StandKnowledge rest)
    {
        var sets = at.Conductors();
        for (var one = 0; one < _count; one++)
            for (var other = one + 1; other < _count; other++)
                if (rest.Measured(one, other) == Relation.Ohms && at.Between(one, other) == Relation.Unknown && sets.Find(one) != sets.Find(other))
                    return Step(at.Stand, MeterTest.Ohms, [one], [other], "whether what lies between them at rest still does");
        return null;
    }

    /// <summary>Conductors of this stand, devices between them counted as joints, in two halves with as many untold pairs between them as can be.</summary>
    private LearnStep? Halved(StandKnowledge at, StandKnowledge rest)
    {
        var sets = new PlaceSets(_count);
        for (var one = 0; one < _count; one++)
            for (var other = one + 1; other < _count; other++)
                if (at.Between(one, other) is Relation.Closed or Relation.Ohms || rest.Measured(one, other) == Relation.Ohms) sets.Join(one, other);
        var conductors = Enumerable.Range(0, _count).GroupBy(sets.Find).Select(g => g.Where(c => at.GroupOf(c) == c || rest.GroupOf(c) == c).ToList()).ToList();
        var (red, black) = (new List<int>(), new List<int>());
        foreach (var conductor in conductors)
        {
            var (toRed, toBlack) = (Untold(at, conductor, red), Untold(at, conductor, black));
            (toBlack > toRed || (toBlack == toRed && black.Count > red.Count) ? red : black).AddRange(conductor);
        }

        var pairs = red.Where(r => black.Exists(b => at.Between(r, b) == Relation.Unknown)).ToList();
        if (pairs.Count > 0)
            return Step(at.Stand, MeterTest.Ohms, pairs, [.. black.Where(b => red.Exists(r => at.Between(r, b) == Relation.Unknown))], "whether anything has closed between the two halves");
        return null;
    }

    private static int Untold(StandKnowledge at, List<int> conductor, List<int> side) =>
        conductor.Sum(c => side.Count(s => at.Between(c, s) == Relation.Unknown));

    /// <summary>Something passed between two bundles: the larger one is halved until two contacts are left.</summary>
    private LearnStep? Narrow(StandKnowledge at)
    {
        foreach (var (red, black, _) in at.Suspects.Where(s => !s.IsDiode).OrderBy(s => s.Red.Length * s.Black.Length))
        {
            if (red.Any(r => black.Any(b => at.Between(r, b) is Relation.Closed or Relation.Ohms))) continue;
            var left = red.Where(r => black.Any(b => at.Between(r, b) == Relation.Unknown)).ToList();
            var right = black.Where(b => red.Any(r => at.Between(r, b) == Relation.Unknown)).ToList();
            if (left.Count == 0 || right.Count == 0) continue;
            if (left.Count > 1 && left.Count >= right.Count) left = left[..((left.Count + 1) / 2)];
            else if (right.Count > 1) right = right[..((right.Count + 1) / 2)];
            return Step(at.Stand, MeterTest.Ohms, left, right, "which of them it is");
        }

        return null;
    }

    /// <summary>Every conductor as an anode against all others, then halves, then the one cathode.</summary>
    private LearnStep? Diodes(StandKnowledge at)
    {
        var heads = Enumerable.Range(0, _count).Where(c => at.GroupOf(c) == c).ToList();
        foreach (var (red, black, _) in at.Suspects.Where(s => s.IsDiode).OrderBy(s => s.Black.Length))
        {
            var from = red[0];
            if (black.Any(b => at.Volts(from, b) is { } volts && !double.IsInfinity(volts))) continue;
            var left = black.Where(b => at.Volts(from, b) is null).ToList();
            if (left.Count > 0) return Step(at.Stand, MeterTest.Diode, [from], left[..((left.Count + 1) / 2)], "which of them a diode leads to");
        }

        foreach (var from in heads)
        {
            var left = heads.Where(t => t != from && at.Volts(from, t) is null && at.Between(from, t) == Relation.Open).ToList();
            if (left.Count > 0) return Step(at.Stand, MeterTest.Diode, [from], left, "whether a diode leads from it to any other");
        }

        return null;
    }

    private LearnStep Step(Stand stand, MeterTest test, List<int> red, List<int> black, string why) =>
        new(stand, test, [.. red.Select(c => _known.Contacts[c])], [.. black.Select(c => _known.Contacts[c])], why);

    /// <summary>A number as the reports have it.</summary>
    internal static string Number(long number) => number.ToString("N0", CultureInfo.InvariantCulture);
}
