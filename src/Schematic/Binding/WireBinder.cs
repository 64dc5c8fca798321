using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Builds nets, wires and cables.</summary>
internal sealed class WireBinder(NameTable names, BindingReporter report, TerminalBinder terminals)
{
    /// <summary>American gauges run from 4/0 (-3) to 40 in wire tables (ASTM B258, from memory).</summary>
    private const int ThickestAwg = -3;
    private const int ThinnestAwg = 40;

    /// <summary>The designator of a core's wire or a screen's.</summary>
    public static string CoreDesignator(CableSyntax cable, WireSyntax core) => $"{cable.Designator.Text}-{core.Name.Text}";

    public Net? Net(Scope scope, NetSyntax syntax)
    {
        var isNew = names.DeclareNet(scope, syntax.Name);
        var members = terminals.Bind(scope, syntax.Members).Items
            .Where(m => m.Terminal is not null)
            .Select(m => new NetMember(m.Terminal!.Value, m.Span));
        var net = new Net(scope.Full(syntax.Name.Text), [.. members], scope.At(syntax.Name.Span));
        if (syntax.Members.IsEmpty && !syntax.HasErrors)
            report.MissingValue(net.Span, $"The net `{syntax.Name.Text}` has no members.", "List its terminals: net RTN PS1:- A1:GND.");
        return isNew ? net : null;
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
            ScreenTerminal = screens is [{ From: { } from, To: null }, ..] ? terminals.One(scope, from) : null,
            OrderText = reader.Word("order")?.Text,
            PricePerMetre = reader.Price(),
        };
        return (cable, wires.DrainToImmutable());
    }

    private static double? LengthOf(Dictionary<Dimension, QuantitySyntax> ratings) =>
        ratings.TryGetValue(Dimension.Length, out var length) && length.Value > 0 ? length.Value : null;

    /// <summary>A wire or a core; null when an end is not joined or not known.</summary>
    private Wire? Conductor(Scope scope, WireSyntax syntax, string designator)
    {
        var reader = new ClauseReader(syntax.Clauses, scope, report);
        var ratings = reader.Ratings("a gauge or a length", Dimension.Gauge, Dimension.Area, Dimension.Length);
        var gauge = GaugeOf(scope, ratings);
        var colour = reader.Colour();
        var from = syntax.To is null ? null : terminals.One(scope, syntax.From);
        var to = terminals.One(scope, syntax.To);
        if (from is null || to is null) return null;
        return new Wire(scope.Full(designator), from.Value, to.Value, scope.At(syntax.Name.Span))
        {
            Gauge = gauge,
            Colour = colour,
            LengthMm = LengthOf(ratings),
            FromSpan = scope.At(syntax.From!.Span),
            ToSpan = scope.At(syntax.To!.Span),
        };
    }

    private WireGauge? GaugeOf(Scope scope, Dictionary<Dimension, QuantitySyntax> ratings)
    {
        var area = ratings.GetValueOrDefault(Dimension.Area);
        if (ratings.GetValueOrDefault(Dimension.Gauge) is not { } awg)
            return area is { Value: > 0 } ? WireGauge.FromMm2(area.Value) : null;
        if (area is not null) report.StatedTwice(scope.At(area.Span), "the cross-section", scope.At(awg.Span));
        if (awg.Value == Math.Floor(awg.Value) && awg.Value is >= ThickestAwg and <= ThinnestAwg) return WireGauge.FromAwg((int)awg.Value);
        report.OutOfRange(scope.At(awg.Span), $"There is no gauge {awg.Number} AWG.", "Give a whole number from 40 up to 0, or 2/0, 3/0, 4/0.");
        return null;
    }
}
