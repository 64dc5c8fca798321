using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis;
using Schematic.Analysis.Loads;
using Schematic.Analysis.Quantities;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Layout.Tables;
using Schematic.Model;

namespace Schematic.Layout.LoadSheets;

/// <summary>
/// What each supply gives: what to set it to and fuse it at, its setting on the scale of settings that serve every load, and
/// bars of use against limit for the supply, the fuses, the contacts and the most loaded wires.
/// </summary>
internal sealed class LoadBars : FlowBlock
{
    private const double LetterHeight = 2.5;
    private const double LinePitch = 4.2;
    private const double BarHeight = 3.5;
    private const double BarPitch = 5;
    private const double MostNameMm = 46;
    private const double MostWordsMm = 60;
    private const double LeastBarMm = 28;
    private const double TextGapMm = 3;
    // Sentences in narrower lines are hard to read.
    private const double LeastWidth = 85;

    // What uses less of its limit is not drawn: nobody has to look at it.
    private const double LeastShare = 0.2;

    private const string Derated = ", derated";
    private static readonly string DeratedNote = $"derated: a contact's current counted more for coils and lamps ({Sources.SwitchDerating}).";

    private readonly SupplyLoad _supply;
    private readonly ImmutableArray<LoadBar> _bars;
    private readonly string _leftOut;
    private readonly double _namesMm;
    private readonly double _wordsMm;
    private ImmutableArray<string> _uncounted = [];

    private LoadBars(SupplyLoad supply, ImmutableArray<LoadBar> bars, string leftOut)
        : base($"Load on {supply.Supply.Designator} {supply.Supply.Description}".TrimEnd())
    {
        (_supply, _bars, _leftOut) = (supply, bars, leftOut);
        double Widest(Func<LoadBar, string> words, double most) => TextGapMm + Math.Min(most, bars.Select(b => Lettering.WidthMm(words(b), LetterHeight)).DefaultIfEmpty(0).Max() + 0.1);
        (_namesMm, _wordsMm) = (Widest(b => b.Name, MostNameMm), Widest(b => b.Words, MostWordsMm));
    }

    /// <summary>A block for each supply; what belongs to no one supply stands with the first.</summary>
    public static IEnumerable<LoadBars> Of(AnalysisContext context) => !context.Panel.Parts.Any(p => p is Supply) ? []
        : context.Worst.Supplies.Select((s, i) => new LoadBars(
            s, [.. SupplyBars(s), .. i == 0 ? ProtectorBars(context.Worst).Concat(OtherBars(context.Worst).Where(IsShown)) : []],
            i == 0 ? LeftOut(OtherBars(context.Worst).Count(b => !IsShown(b))) : "")
        {
            _uncounted = context.Worst.Uncounted,
        });

    /// <inheritdoc/>
    protected override FlowShape? Shape(FlowRoom room)
    {
        if (room.WidthMm < Math.Min(Math.Max(LeastWidth, _namesMm + LeastBarMm + _wordsMm), room.SheetMm) - 1e-6) return null;
        var advice = Advice(_supply, _uncounted).SelectMany(l => Lettering.Wrap(UnitSigns.Of(l), LetterHeight, room.WidthMm)).Select(l => WordRow.Of([l], pitchMm: LinePitch));
        IEnumerable<FlowRow> scale = SettingScale.HeightOf(_supply) > 0
            ? [new FlowRow(SettingScale.HeightOf(_supply), () => [.. SettingScale.Marks(_supply, new BoxMm(0, 0, room.WidthMm, 0))])] : [];
        var words = string.Join(' ', new[] { _bars.Any(b => b.Words.EndsWith(Derated, StringComparison.Ordinal)) ? DeratedNote : "", _leftOut }.Where(w => w.Length > 0));
        ImmutableArray<FlowRow> notes = words.Length == 0 ? [] : [WordRow.Of(Lettering.Wrap(words, LetterHeight, room.WidthMm), WordRow.NoteGapMm, LinePitch)];
        return new FlowShape(
            room.WidthMm, 1, FlowRow.None, [.. advice, .. scale, .. _bars.Select(b => new FlowRow(BarPitch, () => [.. Draw(b, room.WidthMm)]))], notes);
    }

    private static string LeftOut(int bars) => bars == 0 ? ""
        : string.Create(CultureInfo.InvariantCulture, $"{bars} more contacts, drops and wires: below {LeastShare * 100:0} % each; \"schematic load\" prints them.");

    private static bool IsShown(LoadBar bar) => bar.Share >= LeastShare;

    private static IEnumerable<string> Advice(SupplyLoad load, ImmutableArray<string> uncounted)
    {
        var supply = load.Supply.Designator;
        if (load.Supply.MaxVolts == 0)
        {
            yield return $"{supply} has no stated voltage: nothing is known of what it serves.";
            yield break;
        }

        yield return load.Setting.Recommended is { } volts
            ? load.Supply.IsAdjustable
                ? $"Set {supply} to {Volts(volts)}: every load is served from {Volts(load.Setting.Lowest.Volts)} ({load.Setting.Lowest.Reason}) to {Volts(load.Setting.Highest.Volts)} ({load.Setting.Highest.Reason})."
                : $"{supply} is fixed at {Volts(load.Supply.Volts)}, which serves every load."
            : $"No setting serves every load: at least {Volts(load.Setting.Lowest.Volts)} ({load.Setting.Lowest.Reason}), at most {Volts(load.Setting.Highest.Volts)} ({load.Setting.Highest.Reason}).";
        if (!uncounted.IsEmpty) yield return $"Currents are those without {NameList.Sentence(uncounted)}, of which no resistance is known: no fuse is advised yet.";
        else yield return load.Protector.Amps is { } fuse
            ? $"{FuseWords(supply, fuse, load.Amps.Value)}"
                + (double.IsFinite(load.Protector.MostAmps) ? $", below the {ValueText.Amps(load.Protector.MostAmps)} of the weakest wire." : ".")
            : $"No fuse rating carries {ValueText.Amps(load.Amps.Value)} and guards the weakest wire ({ValueText.Amps(load.Protector.MostAmps)}): take thicker wires.";
        if (load.Amps.Position.Length > 0) yield return $"Most current when: {load.Amps.Position}.";
    }

    /// <summary>A rating that the feed has already may be larger than the next one.</summary>
    private static string FuseWords(string supply, double fuse, double amps) =>
        $"Fuse at the output of {supply}: {ValueText.Amps(fuse)}, which carries {ValueText.Amps(amps)} at three quarters of its rating ({ValueText.Amps(amps / 0.75)} at least)";

    private static IEnumerable<LoadBar> SupplyBars(SupplyLoad supply)
    {
        if (supply.Supply.LimitAmps is { } limit)
            yield return new LoadBar($"{supply.Supply.Designator} current", Parts(supply), limit, Words(supply.Amps.Value, limit));
    }

    private static IEnumerable<LoadBar> ProtectorBars(WorstCases worst)
    {
        foreach (var p in worst.Protectors)
            if (p.RatedAmps is { } rated) yield return new LoadBar($"{p.Part.Designator} current", [("", p.Amps.Value)], rated, Words(p.Amps.Value, rated));
    }

    /// <summary>What belongs to no one supply.</summary>
    private static IEnumerable<LoadBar> OtherBars(WorstCases worst)
    {
        foreach (var c in worst.Contacts.Where(c => c.Rating is not null && !c.Loads.IsEmpty))
            yield return new LoadBar($"{c.Contact.Common} – {c.Contact.Throw}", [("", c.RequiredAmps.Value)], c.Rating!.Amps, $"{Words(c.RequiredAmps.Value, c.Rating.Amps)}{Derated}");
        foreach (var l in worst.Loads.Where(l => l.Drop is not null))
            yield return new LoadBar($"drop to {l.Name}", [("", l.Drop!.Value)], l.AllowedDrop, $"{ValueText.Volts(l.Drop.Value)} of {ValueText.Volts(l.AllowedDrop)}{Percent(l.Drop.Value / l.AllowedDrop)}");
        foreach (var w in worst.Wires.Where(w => w.Share > 0).OrderByDescending(w => Math.Round(w.Share!.Value, 9)).ThenBy(w => w.Wire.Designator, NaturalOrder.Comparer))
            yield return new LoadBar($"{w.Wire.Designator}, {UnitSigns.Of(w.Wire.Gauge!.Text)}", [("", w.Amps.Value)], w.Capacity!.Amps, Words(w.Amps.Value, w.Capacity.Amps));
    }

    /// <summary>The loads that make up the current; what they leave (boards, resistors) is a part without a name.</summary>
    private static List<(string Name, double Value)> Parts(SupplyLoad supply)
    {
        var rest = supply.Amps.Value - supply.Shares.Sum(s => s.Amps);
        List<(string, double)> parts = [.. supply.Shares];
        if (rest > 1e-3 * supply.Amps.Value) parts.Add(("", rest));
        return rest < -1e-3 * supply.Amps.Value ? [("", supply.Amps.Value)] : parts;
    }

    private IEnumerable<Mark> Draw(LoadBar bar, double width)
    {
        const double y = 0.75;
        var (left, right) = (_namesMm, width - _wordsMm);
        var baseline = y + (BarHeight / 2) + (LetterHeight / 2);
        yield return Text(Lettering.Fit(bar.Name, LetterHeight, _namesMm - TextGapMm), new PointMm(0, baseline));
        yield return Text(Lettering.Fit(bar.Words, LetterHeight, _wordsMm - TextGapMm), new PointMm(right + TextGapMm, baseline));

        // A use beyond the limit fills the bar, and a thick cross stroke says so beside the figures.
        var scale = (right - left) / bar.Limit / Math.Max(1, bar.Share);
        var x = left;
        foreach (var (name, value) in bar.Parts)
        {
            var length = value * scale;
            yield return LineMark.Rectangle(MarkRole.Table, new BoxMm(x, y, x + length, y + BarHeight), Pen.Narrow, PartInk);
            if (name.Length > 0 && Lettering.WidthMm(name, LetterHeight) + 2 < length)
                yield return Text(name, new PointMm(x + (length / 2), baseline)) with { Align = TextAlign.Middle };
            x += length;
        }

        var limit = left + (bar.Limit * scale);
        yield return LineMark.Rectangle(MarkRole.Table, new BoxMm(left, y, right, y + BarHeight), Pen.Narrow);
        yield return LineMark.Between(MarkRole.Table, new(limit, y - 0.6), new(limit, y + BarHeight + 0.6), Pen.Frame);
    }

    private static Ink PartInk => new(205, 205, 205);

    private static string Words(double amps, double limit) => UnitSigns.Of($"{ValueText.Amps(amps)} of {ValueText.Amps(limit)}{Percent(amps / limit)}");

    private static string Percent(double share) =>
        string.Create(CultureInfo.InvariantCulture, $": {share * 100:0} %{(share > 1 ? ", OVER" : "")}");

    private static string Volts(double volts) => volts.ToString("0.0#", CultureInfo.InvariantCulture) + " V";

    private static TextMark Text(string text, PointMm at) => new(MarkRole.Table, text, at, LetterHeight);
}
