using System.Collections.Immutable;

namespace Schematic.Inserts;

/// <summary>One ring or one arc of contacts, perhaps with a contact in the centre.</summary>
/// <param name="Count">How many contacts stand on the ring, the centre not counted.</param>
public sealed record RingInsert(int Count) : InsertBuilder
{
    /// <summary>Angle from the first to the last contact in degrees; 360 means all the way round, evenly spaced.</summary>
    public double ArcDegrees { get; init; } = 360;

    /// <summary>
    /// Names along the arc from its start, where they do not follow the numbers: 1 4 2 5 3. Empty: in number order.
    /// </summary>
    public ImmutableArray<string> Order { get; init; } = [];

    /// <summary>Whether there is a contact in the centre; it is numbered last.</summary>
    public bool HasCentre { get; init; }

    /// <summary>Whether the arc runs clockwise on <see cref="Face"/>; null when not stated (then it does).</summary>
    public bool? Clockwise { get; init; }

    /// <summary>The face that direction and start angle are meant for; null when not stated (then the front of the pins).</summary>
    public FaceView? Face { get; init; }

    /// <summary>
    /// Angle of the first contact in degrees clockwise from the key on <see cref="Face"/>; null: the key stands in the middle
    /// of the gap between the last and the first contact.
    /// </summary>
    public double? StartDegrees { get; init; }

    /// <summary>Radius of the ring in millimetres; null: as small as contacts 3.3 mm apart allow.</summary>
    public double? RadiusMm { get; init; }

    /// <inheritdoc/>
    protected override string Family => "ring";

    /// <inheritdoc/>
    protected override InsertOutline UsualOutline => InsertOutline.Round;

    /// <inheritdoc/>
    protected override bool HasGuideLine => Order.IsEmpty;

    private bool RunsClockwise => Clockwise ?? true;

    private FaceView OnFace => Face ?? FaceView.FrontOfPins;

    private double StepDegrees => ArcDegrees >= 360 ? 360.0 / Count : Count == 1 ? 0 : ArcDegrees / (Count - 1);

    private protected override ImmutableArray<(double X, double Y)> Layout(ImmutableArray<InsertProblem>.Builder problems)
    {
        Check(problems);
        if (problems.Count > 0) return [];
        var sense = RunsClockwise ? 1 : -1;
        var gap = ArcDegrees >= 360 ? StepDegrees : 360 - ArcDegrees;
        var start = StartDegrees ?? sense * gap / 2;
        var radius = RadiusMm ?? UsualRadius();
        var places = ImmutableArray.CreateBuilder<(double X, double Y)>();
        for (var i = 0; i < Count; i++)
        {
            var (x, y) = Circle.At(start + (sense * i * StepDegrees), radius);
            places.Add(FromFace(OnFace, x, y));
        }

        if (HasCentre) places.Add((0, 0));
        return places.ToImmutable();
    }

    private protected override string ConventionFor(string first)
    {
        var sense = RunsClockwise ? "clockwise" : "counter-clockwise";
        var centre = HasCentre ? ", the last contact in the centre" : "";
        var assumed = string.Join(" and ", new[]
        {
            Clockwise is null ? "direction" : null,
            Face is null ? "face" : null,
        }.Where(w => w is not null));
        var along = Order.IsEmpty ? $"{first} first, {sense}" : $"in the order {string.Join(' ', Order)}, {sense}";
        return $"{along}, on the {OnFace.Words()}{centre}{(assumed.Length > 0 ? $"; {assumed} assumed, not stated" : "")}";
    }

    private protected override ImmutableArray<ContactPosition> InNumberOrder(ImmutableArray<ContactPosition> contacts)
    {
        if (Order.IsEmpty) return contacts;
        // The family has named the places 1, 2, 3 along the arc; the order says who really stands there.
        var byName = contacts.Take(Count).Zip(Order, (c, name) => c with { Name = name }).ToDictionary(c => c.Name, StringComparer.Ordinal);
        var rest = contacts.Skip(Count);
        return [.. contacts.Take(Count).Select(c => byName[c.Name]), .. rest];
    }

    private double UsualRadius()
    {
        const double spacing = 3.3;
        var ring = Count < 2 ? 0 : spacing / (2 * Math.Sin(Math.Min(90, StepDegrees / 2) * Math.PI / 180));
        return Math.Max(ring, spacing);
    }

    private void Check(ImmutableArray<InsertProblem>.Builder problems)
    {
        if (Count is < 1 or > MaxContacts)
            problems.Add(new($"A ring has 1 to {MaxContacts} contacts, not {Count}.", "Count the contacts on the ring."));
        if (!(ArcDegrees is > 0 and <= 360))
        {
            problems.Add(new(
                $"An arc of {Text(ArcDegrees)} degrees is not above 0 and at most 360.",
                "Give the angle from the first to the last contact."));
        }

        CheckLength(RadiusMm, "radius", problems);
        CheckOrder(problems);
    }

    private void CheckOrder(ImmutableArray<InsertProblem>.Builder problems)
    {
        if (Order.IsEmpty || problems.Count > 0) return;
        var names = Names.IsEmpty
            ? Letters ? LetterSequence.Take(Count) : [.. Enumerable.Range(1, Count).Select(i => Text(i))]
            : [.. Names.Take(Count)];
        if (Order.Length == names.Length && Order.ToHashSet(StringComparer.Ordinal).SetEquals(names)) return;
        problems.Add(new(
            $"The order {string.Join(' ', Order)} does not name each contact of the ring once.",
            $"Name all {Count} contacts in the order in which they follow along the arc."));
    }
}
