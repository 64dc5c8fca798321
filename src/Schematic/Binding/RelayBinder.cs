using System.Collections.Immutable;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>Builds relays, their contacts numbered after EN 50005.</summary>
internal static class RelayBinder
{
    private const int MostSets = 9;

    private static readonly string[] Forms = ["make", "break", "changeover"];

    /// <summary>Builds one.</summary>
    public static Relay Make(DeviceStatement device)
    {
        var coil = CoilBinder.Make(device);
        var poles = ImmutableArray.CreateBuilder<RelayPole>();
        var terminalList = new List<Terminal> { new(Relay.CoilEnds.From, device.Span), new(Relay.CoilEnds.To, device.Span) };
        var block = new ClauseReader(device.Syntax.Block, device.Scope, device.Report, Forms);
        foreach (var clause in block.Clauses.Where(c => Forms.Contains(c.Keyword)))
        {
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

        return new Relay(device.Name, coil, poles.DrainToImmutable(), device.Span)
        {
            Rating = device.Reader.Rating(),
            Terminals = [.. terminalList],
        };
    }

    /// <summary>Function digits after EN 50005: 1-2 break, 3-4 make, 1-2-4 changeover; the tens digit counts the sets.</summary>
    private static RelayPole PoleOf(DeviceStatement device, string form, int set, SourceSpan span)
    {
        Throw Operated(string terminal, string label) =>
            new(terminal, label, new EnergisedCondition(device.Name, true, span), span);
        Throw Released(string terminal, string label) =>
            new(terminal, label, new EnergisedCondition(device.Name, false, span), span);
        return form switch
        {
            "make" => new RelayPole(ContactForm.Make, new Pole($"{set}3", [Operated($"{set}4", "")], span)),
            "break" => new RelayPole(ContactForm.Break, new Pole($"{set}1", [Released($"{set}2", "")], span)),
            _ => new RelayPole(
                ContactForm.Changeover, new Pole($"{set}1", [Released($"{set}2", "released"), Operated($"{set}4", "operated")], span)),
        };
    }
}
