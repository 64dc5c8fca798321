using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Builds nets, wires and cables.</summary>
internal sealed class WireBinder(NameTable names, BindingReporter report, TerminalBinder terminals, PartList parts)
{
    /// <summary>American gauges run from 4/0 (-3) to 40 in wire tables (ASTM B258, from memory).</summary>
    private const int ThickestAwg = -3;
    private const int ThinnestAwg = 40;

    /// <summary>
    /// Usual cross-sections of thin wires in square millimetres (IEC 60228, and smaller ones from the trade; from memory): a
    /// length of so many millimetres without a cross-section was meant as one.
    /// </summary>
    private static readonly double[] UsualMm2 = [0.05, 0.08, 0.14, 0.2, 0.22, 0.25, 0.34, 0.35, 0.5, 0.75, 1, 1.5, 2.5, 4];

    /// <summary>The designator of a core's wire or a screen's.</summary>
    public static string CoreDesignator(CableSyntax cable, WireSyntax core) => $"{cable.Designator.Text}-{core.Name.Text}";

    public Net? Net(Scope scope, NetSyntax syntax)
    {
        var isNew = names.DeclareNet(scope, syntax.Name);
        var members = (syntax.Run.IsAlone ? terminals.Bind(scope, syntax.Members).Items : MembersOf(scope, syntax))
            .Where(m => m.Terminal is not null)
            .Select(m => new NetMember(m.Terminal!.Value, m.Span));
        var net = new Net(scope.Full(syntax.Name.Text), [.. members], scope.At(syntax.Name.Span));
        if (syntax.Members.IsEmpty && !syntax.HasErrors)
            report.MissingValue(net.Span, $"The net `{syntax.Name.Text}` has no members.", "List its terminals: net RTN PS1:- A1:GND.");
        return isNew ? net : null;
    }

    /// <summary>Of a run of nets each takes one contact from every range, in order: <c>net N1..N4 J1:1..4 X1:1..4</c>.</summary>
    private List<BoundTerminal> MembersOf(Scope scope, NetSyntax syntax)
    {
        var members = new List<BoundTerminal>();
        WordSyntax? part = null;
        foreach (var item in syntax.Members)
        {
            part = item.Part ?? part;
            members.Add(terminals.Of(scope, [item with { Part = part }], syntax.Run));
        }

        return members;
    }

    public Wire? Wire(Scope scope, WireSyntax syntax)
    {
        var wire = Conductor(scope, syntax, syntax.Name.Text);
        return names.Own(scope, syntax.Name.Text, syntax.Name.Span) is null ? null : wire;
    }

    /// <summary>Builds a cable and the wires that its joined cores are.</summary>
    public (Cable? Cable, ImmutableArray<Wire> Wires) Cable(Scope scope, CableSyntax syntax)
    {
        var reader = new ClauseReader(syntax.Clauses, scope, report);
        var ratings = reader.Ratings("a length", Dimension.Length);
        var declared = names.Own(scope, syntax.Designator.Text, syntax.Designator.Span);
        var length = LengthOf(ratings);
        var wires = ImmutableArray.CreateBuilder<Wire>();
        var screens = syntax.Cores.Where(c => c.Keyword.Text == "screen").ToList();
        foreach (var second in screens.Skip(1))
            report.StatedTwice(scope.At(second.Keyword.Span), "the screen", scope.At(screens[0].Keyword.Span));
        foreach (var core in syntax.Cores.Except(screens.Skip(1)))
        {
            if (Conductor(scope, core, CoreDesignator(syntax, core)) is not { } wire) continue;
            wires.Add(wire with
            {
                Cable = scope.Full(syntax.Designator.Text),
                Core = core.Keyword.Text == "screen" ? null : core.Name.Text,
                LengthMm = wire.LengthMm ?? length,
            });
        }

        if (declared is null) return (null, []);
        var cable = new Cable(
            declared.FullName, [.. syntax.Cores.Where(c => c.Keyword.Text == "core").Select(c => c.Name.Text)], declared.Span)
        {
            Description = syntax.Description?.Text ?? "",
            LengthMm = length,
            HasScreen = screens.Count > 0,
            Screen = wires.FirstOrDefault(w => w.Core is null)?.Designator,
            ScreenTerminal = screens is [{ From: [var from], To: [] }, ..] ? terminals.One(scope, from) : null,
            OrderText = reader.Word("order")?.Text,
            PricePerMetre = reader.Price(),
        };
        return (cable, wires.DrainToImmutable());
    }

    private static double? LengthOf(Dictionary<Dimension, QuantitySyntax> ratings) =>
        ratings.TryGetValue(Dimension.Length, out var length) && IsUsable(length, Dimension.Length) ? length.Value : null;

    private static bool IsUsable(QuantitySyntax quantity, Dimension dimension) =>
        quantity.Value >= QuantityRange.Of(dimension).Least && quantity.Value <= QuantityRange.Of(dimension).Most;

    /// <summary>A wire or a core; null when an end is not joined or not known.</summary>
    private Wire? Conductor(Scope scope, WireSyntax syntax, string designator)
    {
        var reader = new ClauseReader(WithoutThinLength(scope, syntax.Clauses), scope, report);
        var ratings = reader.Ratings("a gauge or a length", Dimension.Gauge, Dimension.Area, Dimension.Length);
        var gauge = GaugeOf(scope, ratings);
        var colour = ColourOf(scope, reader, syntax.Run);
        var from = syntax.To.IsEmpty ? default : terminals.Of(scope, syntax.From, syntax.Run);
        var to = terminals.Of(scope, syntax.To, syntax.Run, mayBeUnknown: true);
        if (to.IsNotTraced && from.Terminal is not null)
        {
            var end = new FarEnd(scope.Full(designator), to.Span);
            parts.Add(end);
            to = to with { Terminal = end.At(FarEnd.TerminalName) };
        }

        if (from.Terminal is null || to.Terminal is null) return null;
        return new Wire(scope.Full(designator), from.Terminal.Value, to.Terminal.Value, scope.At(syntax.Name.Span))
        {
            Gauge = gauge,
            Colour = colour,
            LengthMm = LengthOf(ratings),
            FromSpan = from.Span,
            ToSpan = to.Span,
        };
    }

    /// <summary>
    /// A wire of 0.5 mm is none: its cross-section was meant, where none is stated. Told once, and then left out.
    /// </summary>
    private ImmutableArray<ClauseSyntax> WithoutThinLength(Scope scope, ImmutableArray<ClauseSyntax> clauses)
    {
        bool Has(ClauseSyntax clause, Func<QuantitySyntax, bool> kind) => clause.Keyword.Length == 0 && clause.All<QuantitySyntax>().Any(kind);
        if (clauses.Any(c => Has(c, q => q.Dimension is Dimension.Gauge or Dimension.Area))) return clauses;
        var thin = clauses.FirstOrDefault(c => Has(c, q => q is { Dimension: Dimension.Length, Unit: "mm" } && UsualMm2.Contains(q.Value)));
        if (thin is null) return clauses;
        var quantity = thin.All<QuantitySyntax>().First();
        report.WrongUnit(scope.At(quantity.Span), quantity, "a cross-section", $"{quantity.Number} mm2");
        return clauses.Remove(thin);
    }

    /// <summary>
    /// The colour that stands for itself, or that of a sequence after <c>colours</c>, which is gone through again and again.
    /// <c>colours iec</c> is the order of the table of IEC 60757: black brown red orange yellow green blue violet grey white.
    /// </summary>
    private WireColour? ColourOf(Scope scope, ClauseReader reader, RunPlace run)
    {
        var single = reader.Colour();
        if (reader.Find("colours") is not { } clause) return single;
        if (single is not null)
        {
            report.Contradiction(
                scope.At(clause.KeywordSpan), "One colour and a sequence of colours are given.", "Keep the one that holds.",
                scope.At(reader.Clauses.First(c => c.Keyword.Length == 0 && c.All<WordSyntax>().Any()).Span));
        }

        var words = clause.All<WordSyntax>().ToList();
        if (words is [{ Text: "iec" }]) return new WireColour(Colours.TableOrder[run.Index % Colours.TableOrder.Length]);
        foreach (var word in words.Where(w => Colours.Find(w.Text) is null))
            report.UnknownColour(scope.At(word.Span), word.Text);
        return Colours.Find(words[run.Index % words.Count].Text);
    }

    private WireGauge? GaugeOf(Scope scope, Dictionary<Dimension, QuantitySyntax> ratings)
    {
        var area = ratings.GetValueOrDefault(Dimension.Area);
        if (ratings.GetValueOrDefault(Dimension.Gauge) is not { } awg)
            return area is not null && IsUsable(area, Dimension.Area) ? WireGauge.FromMm2(area.Value) : null;
        if (area is not null) report.StatedTwice(scope.At(area.Span), "the cross-section", scope.At(awg.Span));
        if (awg.Value == Math.Floor(awg.Value) && awg.Value is >= ThickestAwg and <= ThinnestAwg) return WireGauge.FromAwg((int)awg.Value);
        report.OutOfRange(scope.At(awg.Span), $"There is no gauge {awg.Number} AWG.", "Give a whole number from 40 up to 0, or 2/0, 3/0, 4/0.");
        return null;
    }
}
