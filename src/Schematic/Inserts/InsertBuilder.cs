using System.Collections.Immutable;
using System.Globalization;

namespace Schematic.Inserts;

/// <summary>
/// The description of an insert, ready to be built: what every family has in common. A family lays out its contacts; names,
/// positions given by hand, and the checks are the same for all.
/// </summary>
public abstract record InsertBuilder
{
    /// <summary>More contacts than this are taken for a slip of the pen.</summary>
    public const int MaxContacts = 1000;

    /// <summary>Contact centres closer than this are taken for a slip of the pen: no contact is that small.</summary>
    private const double LeastSpacingMm = 0.4;

    /// <summary>Diameter drawn where no contact size is known and there is room.</summary>
    private const double UsualDiameterMm = 1.6;

    /// <summary>Contact names given by hand, in the order of numbering; empty for numbers or letters.</summary>
    public ImmutableArray<string> Names { get; init; } = [];

    /// <summary>Whether the contacts carry the published letter sequence. Names given by hand win.</summary>
    public bool Letters { get; init; }

    /// <summary>
    /// Positions given by hand, in the canonical view. They always win over the family's own, contact by contact; a name that
    /// the family does not have adds a contact at the end.
    /// </summary>
    public ImmutableArray<ContactPosition> Positions { get; init; } = [];

    /// <summary>Contact diameter in millimetres, or null when unknown: then only what no contact could be is rejected.</summary>
    public double? DiameterMm { get; init; }

    /// <summary>Diameters in millimetres of contacts that differ, by name.</summary>
    public ImmutableDictionary<string, double> OtherDiametersMm { get; init; } = ImmutableDictionary<string, double>.Empty;

    /// <summary>Where the layout was taken from, or null.</summary>
    public string? Source { get; init; }

    /// <summary>The outline drawn around the contacts, or null for the family's own.</summary>
    public InsertOutline? Outline { get; init; }

    /// <summary>The family in a word.</summary>
    protected abstract string Family { get; }

    /// <summary>The outline that goes with the family.</summary>
    protected abstract InsertOutline UsualOutline { get; }

    /// <summary>Whether a guide line through the contacts in their order helps the reader.</summary>
    protected virtual bool HasGuideLine => false;

    /// <summary>Builds the insert, or says why it cannot be built.</summary>
    public InsertResult Build()
    {
        var problems = ImmutableArray.CreateBuilder<InsertProblem>();
        var places = Layout(problems);
        if (problems.Any(p => !p.IsWarning)) return new InsertResult(null, problems.ToImmutable());
        if (places.Length + Positions.Length is 0 or > MaxContacts)
        {
            problems.Add(new($"An insert has 1 to {MaxContacts} contacts.", "Give the number of contacts the insert really has."));
            return new InsertResult(null, problems.ToImmutable());
        }

        var names = NamesFor(places.Length, problems);
        if (problems.Any(p => !p.IsWarning)) return new InsertResult(null, problems.ToImmutable());
        var contacts = WithPositions(InNumberOrder([.. names.Zip(places, (n, p) => new ContactPosition(n, p.X, p.Y))]));
        CheckNames(contacts, problems);
        var arrangement = Finish(contacts, names);
        CheckOverlaps(arrangement, problems);
        return new InsertResult(
            problems.Any(p => !p.IsWarning) ? null : arrangement, problems.ToImmutable());
    }

    /// <summary>The family's places in the canonical view, in the order of numbering, or problems.</summary>
    private protected abstract ImmutableArray<(double X, double Y)> Layout(ImmutableArray<InsertProblem>.Builder problems);

    /// <summary>The numbering convention in words. <paramref name="first"/> is the first contact's name.</summary>
    private protected abstract string ConventionFor(string first);

    /// <summary>The contacts in the order in which they are numbered; families number as they lay out unless they say otherwise.</summary>
    private protected virtual ImmutableArray<ContactPosition> InNumberOrder(ImmutableArray<ContactPosition> contacts) => contacts;

    /// <summary>A length or an angle in words.</summary>
    private protected static string Text(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>Turns places laid out on <paramref name="face"/> into the canonical view.</summary>
    private protected static (double X, double Y) FromFace(FaceView face, double x, double y) =>
        face.IsMirrored() ? (0 - x, y) : (x, y);

    /// <summary>Reports a length that is not above zero.</summary>
    private protected static void CheckLength(
        double? length, string what, ImmutableArray<InsertProblem>.Builder problems)
    {
        if (length is { } l && !(l > 0 && double.IsFinite(l)))
            problems.Add(new($"The {what} must be above zero.", $"Give the {what} in millimetres as measured on the part."));
    }

    private ImmutableArray<string> NamesFor(int count, ImmutableArray<InsertProblem>.Builder problems)
    {
        if (!Names.IsEmpty)
        {
            if (Names.Length != count)
            {
                problems.Add(new(
                    $"{Names.Length} names are given for {count} contacts.", "Name every contact, in the order of numbering."));
            }

            return Names;
        }

        if (!Letters)
            return [.. Enumerable.Range(1, count).Select(i => i.ToString(CultureInfo.InvariantCulture))];
        if (count > LetterSequence.Length)
        {
            problems.Add(new(
                $"The letter sequence ends at ZZ, its {LetterSequence.Length}th label, and {count} contacts are to be named.",
                "Give the names by hand: names A B C ..."));
        }

        return LetterSequence.Take(count);
    }

    private ImmutableArray<ContactPosition> WithPositions(ImmutableArray<ContactPosition> contacts)
    {
        var byHand = Positions.GroupBy(p => p.Name, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Last(), StringComparer.Ordinal);
        var known = contacts.Select(c => c.Name).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. contacts.Select(c => byHand.GetValueOrDefault(c.Name, c)),
            .. Positions.Where(p => !known.Contains(p.Name)),
        ];
    }

    private static void CheckNames(ImmutableArray<ContactPosition> contacts, ImmutableArray<InsertProblem>.Builder problems)
    {
        foreach (var twice in contacts.GroupBy(c => c.Name, StringComparer.Ordinal).Where(g => g.Count() > 1))
            problems.Add(new($"Two contacts are named {twice.Key}.", "Give each contact a name of its own."));
        var misread = contacts.Select(c => c.Name).Where(LetterSequence.IsLeftOut).ToList();
        if (misread.Count > 0)
        {
            problems.Add(new(
                $"Contact letter {string.Join(", ", misread)} is left out of the published letter sequence.",
                "Look at the insert again: I, O, Q, l and o are rarely used because they are misread.")
            {
                IsWarning = true,
            });
        }
    }

    private InsertArrangement Finish(ImmutableArray<ContactPosition> contacts, ImmutableArray<string> names)
    {
        var spacing = FaceGeometry.LeastSpacingMm(contacts);
        var sized = contacts.Select(c => OtherDiametersMm.TryGetValue(c.Name, out var d) ? c with { DiameterMm = d } : c);
        return new InsertArrangement(Family, Outline ?? UsualOutline, [.. sized], FullConvention(names))
        {
            HasGuideLine = HasGuideLine,
            ContactDiameterMm = DiameterMm ?? Math.Min(UsualDiameterMm, 0.6 * spacing),
            Source = Source,
        };
    }

    private string FullConvention(ImmutableArray<string> names)
    {
        var own = names.IsEmpty ? "" : ConventionFor(names[0]);
        var byHand = Positions.IsEmpty ? ""
            : names.IsEmpty ? "every position given by hand, on the front of the pins"
            : names.All(n => Positions.Any(p => p.Name == n)) ? "; every position given by hand"
            : "; some positions given by hand";
        return own + byHand;
    }

    private static void CheckOverlaps(InsertArrangement insert, ImmutableArray<InsertProblem>.Builder problems)
    {
        var contacts = insert.Contacts;
        for (var i = 0; i < contacts.Length; i++)
        {
            for (var j = i + 1; j < contacts.Length; j++)
            {
                var room = Math.Max(
                    LeastSpacingMm, (insert.DiameterOf(contacts[i]) + insert.DiameterOf(contacts[j])) / 2);
                var distance = contacts[i].DistanceTo(contacts[j]);
                if (distance >= room) continue;
                problems.Add(new(
                    $"Contacts {contacts[i].Name} and {contacts[j].Name} overlap: their centres are {Text(distance)} mm apart, "
                    + $"at least {Text(room)} mm are needed.",
                    "Give larger radii or a larger pitch, other start angles, or the measured positions."));
                return; // One pair is enough: a wrong pitch makes every pair overlap.
            }
        }
    }
}
