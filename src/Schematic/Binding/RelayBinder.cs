using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>Builds relays, their contacts numbered after EN 50005.</summary>
internal static class RelayBinder
{
    private const int MostSets = 9;
    private const string Delayed = "delayed-";

    private static readonly string[] Forms = ["make", "break", "changeover", "delayed-make", "delayed-break", "delayed-changeover"];

    /// <summary>Builds one.</summary>
    public static Relay Make(DeviceStatement device)
    {
        var coil = CoilBinder.Make(device);
        var (onDelay, offDelay) = (DelayOf(device, "on-delay"), DelayOf(device, "off-delay"));
        var poles = ImmutableArray.CreateBuilder<RelayPole>();
        var terminalList = new List<Terminal> { new(Relay.CoilEnds.From, device.Span), new(Relay.CoilEnds.To, device.Span) };
        var block = new ClauseReader(device.Syntax.Block, device.Scope, device.Report, [.. Forms, PartGrammar.RelayBridges]);
        foreach (var clause in block.Clauses)
        {
            if (clause.Keyword == PartGrammar.RelayBridges) MakeBeforeBreak(device, clause, poles);
            if (!Forms.Contains(clause.Keyword)) continue;
            var set = poles.Count + 1;
            var span = device.Scope.At(clause.Span);
            if (set > MostSets)
            {
                device.Report.OutOfRange(
                    span, $"A relay has at most {MostSets} contact sets: the tens digit of the marking counts them.",
                    "Give the others to a second relay.");
                break;
            }

            var pole = PoleOf(device, clause.Keyword, set, span);
            poles.Add(pole);
            terminalList.Add(new Terminal(pole.Pole.Common, span));
            terminalList.AddRange(pole.Pole.Throws.Select(t => new Terminal(t.Terminal, span)));
        }

        if (onDelay is null && offDelay is null) ReportMissingDelay(device, block);
        return new Relay(device.Name, coil, poles.DrainToImmutable(), device.Span)
        {
            OnDelay = onDelay,
            OffDelay = offDelay,
            Rating = device.Reader.Rating(),
            Terminals = [.. terminalList],
        };
    }

    /// <summary>The set before the word joins its throws for a moment; only one with two throws, moved at once, can.</summary>
    private static void MakeBeforeBreak(DeviceStatement device, ClauseSyntax clause, ImmutableArray<RelayPole>.Builder poles)
    {
        if (poles.Count > 0 && poles[^1] is { Form: ContactForm.Changeover, IsDelayed: false } set)
        {
            poles[^1] = set with { Pole = set.Pole with { MakesBeforeBreak = true } };
            return;
        }

        device.Report.Contradiction(
            device.Scope.At(clause.KeywordSpan), $"`{PartGrammar.RelayBridges}` stands behind no changeover.",
            "Write it behind the contact set that it is said of: changeover X1:3 X1:4 X1:5 make-before-break.", device.Span);
    }

    private static void ReportMissingDelay(DeviceStatement device, ClauseReader block)
    {
        if (device.Syntax.HasErrors || block.Clauses.FirstOrDefault(c => c.Keyword.StartsWith(Delayed, StringComparison.Ordinal)) is not { } clause) return;
        device.Report.MissingValue(
            device.Scope.At(clause.KeywordSpan), $"`{device.ShownName}` has a delayed contact and no delay.",
            "Say before the block which way it waits: on-delay 5 s, or off-delay 5 s; without the seconds where nobody has timed it yet.");
    }

    /// <summary>The delay after its keyword: a time, a range that it can be set to, or nothing where it is not known.</summary>
    private static Delay? DelayOf(DeviceStatement device, string keyword)
    {
        if (device.Reader.Find(keyword) is not { } clause) return null;
        if (clause.Values.FirstOrDefault() is QuantityRangeSyntax range)
        {
            var low = device.Reader.Value(range.Low, Dimension.Time, "a time");
            var high = low is null ? null : device.Reader.Value(range.High, Dimension.Time, "a time");
            if (low > high) device.Report.OutOfRange(device.Scope.At(range.Span), "The range runs backwards.", "Write the shorter time first.");
            return low is null || high is null || low > high ? Delay.Unknown : new Delay(low.Value, high.Value);
        }

        return device.Reader.Quantity(keyword, Dimension.Time, "a time") is { } seconds ? new Delay(seconds, seconds) : Delay.Unknown;
    }

    /// <summary>
    /// Function digits after EN 50005: 1-2 break, 3-4 make, 1-2-4 changeover, and for delayed contacts 5-6, 7-8 and 5-6-8 (seen
    /// in a secondary page; that 5-6 breaks and 7-8 makes is from memory); the tens digit counts the sets.
    /// </summary>
    private static RelayPole PoleOf(DeviceStatement device, string form, int set, SourceSpan span)
    {
        var isDelayed = form.StartsWith(Delayed, StringComparison.Ordinal);
        var shift = isDelayed ? 4 : 0;
        string Terminal(int digit) => $"{set}{digit + shift}";
        Condition Stands(bool operated) => isDelayed
            ? new DelayedCondition(device.Name, operated, span)
            : new EnergisedCondition(device.Name, operated, span);
        Throw To(int digit, string label, bool operated) => new(Terminal(digit), label, Stands(operated), span);
        var (kind, pole) = form[(isDelayed ? Delayed.Length : 0)..] switch
        {
            "make" => (ContactForm.Make, new Pole(Terminal(3), [To(4, "", true)], span)),
            "break" => (ContactForm.Break, new Pole(Terminal(1), [To(2, "", false)], span)),
            _ => (ContactForm.Changeover, new Pole(Terminal(1), [To(2, "released", false), To(4, "operated", true)], span)),
        };
        return new RelayPole(kind, pole) { IsDelayed = isDelayed };
    }
}
