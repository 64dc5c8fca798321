using System.Collections.Immutable;
using Schematic.Inserts;
using Schematic.Language;

namespace Schematic.Binding;

/// <summary>Reads the clauses that describe a connector's insert, and has it built.</summary>
internal sealed class InsertReader(ClauseReader reader, Scope scope, NameRanges ranges, BindingReporter report)
{
    private static readonly string[] Families = ["spiral", "ring", "rows", "grid", "strip"];

    /// <summary>Words that describe an insert or shape it.</summary>
    private static readonly string[] Describing =
    [
        .. Families, "position", "positions", "rings", "start", "from", "arc", "radius", "radii", "pitch", "gap", "names", "letters", "order",
        "staggered", "d-shape", "centre", "zigzag", "by-rows", "by-columns", "around", "clockwise", "counter-clockwise", "on",
    ];

    /// <summary>Whether a keyword of a connector describes its insert or shapes it.</summary>
    public static bool Describes(string keyword) => Describing.Contains(keyword);

    /// <summary>What the clauses give: the insert, if any; the strip length; whether an insert was described but is wrong.</summary>
    public (InsertArrangement? Arrangement, double? StripMm, bool IsBroken) Read(Func<ImmutableArray<string>, ContactSizes> sizes)
    {
        var strip = reader.Find("strip");
        var stripLength = strip?.Values[0] is QuantitySyntax { Dimension: not Dimension.Unknown } or QuantitySyntax { Unit.Length: > 0 }
            ? reader.Quantity("strip", Dimension.Length, "a length", range: QuantityRange.OfStrip)
            : null;
        var family = FamilyOf(isStripFamily: strip is not null && strip.Values[0] is QuantitySyntax { Unit.Length: 0 });
        var positions = Positions();
        if (family is null && positions.IsEmpty)
        {
            RefuseLooseModifiers();
            return (null, stripLength, false);
        }

        var builder = BuilderFor(family);
        if (builder is null) return (null, stripLength, true);
        builder = builder with
        {
            Positions = positions,
            Letters = reader.Has("letters"),
            Names = Names("names"),
            Outline = OutlineOf(family),
            Source = reader.Word("source")?.Text,
        };
        return (Build(builder, sizes, family ?? "position"), stripLength, false) switch
        {
            (null, var length, _) => (null, length, true),
            var built => built,
        };
    }

    private string? FamilyOf(bool isStripFamily)
    {
        var present = Families.Where(f => f == "strip" ? isStripFamily : reader.Has(f)).ToArray();
        return reader.Choice(present);
    }

    private InsertArrangement? Build(InsertBuilder builder, Func<ImmutableArray<string>, ContactSizes> sizes, string family)
    {
        var result = builder.Build();
        if (result.Arrangement is { } plain)
        {
            var known = sizes([.. plain.Contacts.Select(c => c.Name)]);
            result = (builder with { DiameterMm = known.CommonMm, OtherDiametersMm = known.OthersMm }).Build();
        }

        var clause = reader.Find(family) ?? reader.Clauses.First(c => c.Keyword == family);
        foreach (var problem in result.Problems) report.InsertFault(scope.At(clause.Span), problem.Message, problem.Help, problem.IsWarning);
        return result.Arrangement is { } built && built.Contacts.Length > builder.Positions.Length ? built with { Assumed = AssumedOf(family, built) } : result.Arrangement;
    }

    /// <summary>What a family needs and the file leaves out.</summary>
    private ImmutableArray<InsertAssumption> AssumedOf(string family, InsertArrangement built)
    {
        IEnumerable<InsertAssumption> asked =
        [
            new("on", "its numbering seen on the front of the pins"),
            .. family is "spiral" or "ring" ? [new InsertAssumption("clockwise", "numbers that run clockwise"), new("start", Invariant($"contact {First(built).Name} {First(built).Degrees:0.#}° clockwise of the key, on the front of the pins"))] : (InsertAssumption[])[],
            .. family is "spiral" ? [new InsertAssumption("from", "numbers that begin in the centre")] : (InsertAssumption[])[],
            family is "ring" ? new("radius", Invariant($"a radius of {Radius(built):0.##} mm")) : new("pitch", Invariant($"a pitch of {Pitch(built):0.##} mm")),
        ];
        return [.. asked.Where(a => !reader.Has(a.Word)
            && !(a.Word == "clockwise" && reader.Has("counter-clockwise")) && !(a.Word == "pitch" && reader.Has("radii")))];
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);

    /// <summary>The first contact that does not stand in the centre, and its angle.</summary>
    private static (string Name, double Degrees) First(InsertArrangement built)
    {
        var contact = built.Contacts.FirstOrDefault(c => Math.Abs(c.XMm) > 1e-6 || Math.Abs(c.YMm) > 1e-6) ?? built.Contacts[0];
        return (contact.Name, (Math.Round(Math.Atan2(contact.XMm, contact.YMm) * 180 / Math.PI, 1) + 360) % 360);
    }

    private static double Radius(InsertArrangement built) => built.Contacts.Max(c => Math.Sqrt((c.XMm * c.XMm) + (c.YMm * c.YMm)));

    /// <summary>The least distance between two contacts.</summary>
    private static double Pitch(InsertArrangement built) => built.Contacts.Length < 2 ? 0 : Enumerable.Range(1, built.Contacts.Length - 1)
        .Min(i => Enumerable.Range(0, i).Min(j => built.Contacts[i].DistanceTo(built.Contacts[j])));

    private InsertBuilder? BuilderFor(string? family) => family switch
    {
        "spiral" => Spiral(),
        "ring" => Ring(),
        "rows" => Rows(),
        "grid" => Grid(),
        "strip" => Strip(),
        _ => new PositionsInsert(),
    };

    private SpiralInsert? Spiral()
    {
        var count = reader.Count("spiral", 1, InsertBuilder.MaxContacts);
        var rings = reader.Has("rings") ? reader.Counts("rings", 1, InsertBuilder.MaxContacts) : [];
        if (count is null || rings is null) return null;
        return new SpiralInsert(count.Value)
        {
            Rings = rings.Value,
            FromRim = reader.Word("from")?.Text switch { "rim" => true, "centre" => false, _ => null },
            Clockwise = Clockwise(),
            Face = Face(),
            StartDegrees = reader.Degrees("start"),
            RadiiMm = Lengths("radii"),
            SpacingMm = reader.Quantity("pitch", Dimension.Length, "a length", range: QuantityRange.OfInsert),
        };
    }

    private RingInsert? Ring()
    {
        if (reader.Count("ring", 1, InsertBuilder.MaxContacts) is not { } count) return null;
        return new RingInsert(count)
        {
            ArcDegrees = Arc() ?? 360,
            Order = Names("order"),
            HasCentre = reader.Has("centre"),
            Clockwise = Clockwise(),
            Face = Face(),
            StartDegrees = reader.Degrees("start") is [var start, ..] ? start : null,
            RadiusMm = reader.Quantity("radius", Dimension.Length, "a length", range: QuantityRange.OfInsert),
        };
    }

    private RowsInsert? Rows()
    {
        if (reader.Counts("rows", 1, InsertBuilder.MaxContacts) is not { } counts) return null;
        var rows = new RowsInsert(counts) { IsStaggered = reader.Has("staggered"), Face = Face() };
        if (Pitch() is { } pitch) rows = rows with { PitchMm = pitch };
        if (reader.Quantity("gap", Dimension.Length, "a length", range: QuantityRange.OfInsert) is { } gap) rows = rows with { GapMm = gap };
        return rows;
    }

    private GridInsert? Grid()
    {
        if (reader.Counts("grid", 1, InsertBuilder.MaxContacts) is not [var columns, var rows]) return null;
        var grid = new GridInsert(columns, rows)
        {
            GapMm = reader.Quantity("gap", Dimension.Length, "a length", range: QuantityRange.OfInsert),
            Numbering = reader.Choice("zigzag", "by-rows", "by-columns", "around") switch
            {
                "zigzag" => GridNumbering.Zigzag,
                "by-columns" => GridNumbering.ByColumns,
                "around" => GridNumbering.Around,
                _ => GridNumbering.ByRows,
            },
            From = reader.Word("from")?.Text switch
            {
                "upper-right" => GridCorner.UpperRight,
                "lower-left" => GridCorner.LowerLeft,
                "lower-right" => GridCorner.LowerRight,
                _ => GridCorner.UpperLeft,
            },
            Face = Face(),
        };
        return Pitch() is { } pitch ? grid with { PitchMm = pitch } : grid;
    }

    private StripInsert? Strip()
    {
        var quantity = reader.Find("strip")!.All<QuantitySyntax>().First();
        var number = new NumberSyntax(quantity.Number, quantity.Value, quantity.Span);
        if (reader.Whole(number, "strip", 1, InsertBuilder.MaxContacts) is not { } count) return null;
        var strip = new StripInsert(count) { Face = Face() };
        return Pitch() is { } pitch ? strip with { PitchMm = pitch } : strip;
    }

    private double? Pitch() => reader.Quantity("pitch", Dimension.Length, "a length", range: QuantityRange.OfInsert);

    private double? Arc()
    {
        if (reader.Find("arc")?.Values[0] is not NumberSyntax arc) return null;
        if (arc.Value is > 0 and <= 360) return arc.Value;
        report.OutOfRange(scope.At(arc.Span), $"{arc.Text} is out of range for `arc`.", "Give an angle above 0 and up to 360 degrees.");
        return null;
    }

    private InsertOutline? OutlineOf(string? family) =>
        reader.Has("d-shape") ? InsertOutline.DShape : family == "rows" ? InsertOutline.Rectangular : null;

    private bool? Clockwise() => reader.Choice("clockwise", "counter-clockwise") switch
    {
        "clockwise" => true,
        "counter-clockwise" => false,
        _ => null,
    };

    private FaceView? Face()
    {
        var words = reader.Find("on")?.All<WordSyntax>().Select(w => w.Text).ToList();
        return words switch
        {
            ["front", "pins"] => FaceView.FrontOfPins,
            ["rear", "pins"] => FaceView.RearOfPins,
            ["front", "sockets"] => FaceView.FrontOfSockets,
            ["rear", "sockets"] => FaceView.RearOfSockets,
            _ => null,
        };
    }

    private ImmutableArray<double> Lengths(string keyword) => reader.Find(keyword) is not { } clause
        ? []
        : [.. clause.All<QuantitySyntax>().Select(q => reader.Value(q, Dimension.Length, "a length", zeroAllowed: true, QuantityRange.OfInsert)).OfType<double>()];

    private ImmutableArray<string> Names(string keyword) => reader.Find(keyword) is not { } clause ? []
        : [.. ranges.ExpandAll(clause.All<ContactSyntax>(), scope)];

    private ImmutableArray<ContactPosition> Positions()
    {
        var found = ImmutableArray.CreateBuilder<ContactPosition>();
        var first = new Dictionary<string, ClauseSyntax>(StringComparer.Ordinal);
        foreach (var clause in reader.Clauses.Where(c => c.Keyword == "position"))
        {
            var name = clause.All<WordSyntax>().First();
            if (!first.TryAdd(name.Text, clause))
                report.StatedTwice(scope.At(clause.Span), $"the position of {name.Text}", scope.At(first[name.Text].Span));
            var lengths = clause.All<QuantitySyntax>().Select(Coordinate).ToList();
            if (lengths is [{ } x, { } y]) found.Add(new ContactPosition(name.Text, x, y));
        }

        return found.DrainToImmutable();
    }

    private double? Coordinate(QuantitySyntax quantity)
    {
        var range = QuantityRange.OnFace;
        if (quantity.Dimension == Dimension.Length && Math.Abs(quantity.Value) <= -range.Least) return quantity.Value;
        if (quantity.Dimension == Dimension.Length)
        {
            report.OutOfRange(scope.At(quantity.Span), $"{quantity.Number} {quantity.Unit} is out of range here.", $"Give {range.Words}.");
            return null;
        }

        report.WrongUnit(scope.At(quantity.Span), quantity, "a length", possible: [Dimension.Length]);
        return null;
    }

    /// <summary>Words that shape an insert say nothing without one.</summary>
    private void RefuseLooseModifiers()
    {
        foreach (var word in new[] { "rings", "start", "from", "on", "arc", "radius", "radii", "pitch", "gap", "names", "letters" })
        {
            if (reader.Find(word) is not { } clause) continue;
            report.MissingValue(
                scope.At(clause.KeywordSpan), $"`{word}` says nothing without the insert it belongs to.",
                "Write the insert before it, such as spiral 37 or rows 13 12.");
        }
    }
}
