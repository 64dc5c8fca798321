using System.Globalization;
using Schematic.Analysis;
using Schematic.Inserts;
using Schematic.Model;

namespace Schematic.Editor;

/// <summary>What is on a contact and where it sits on its face, in words.</summary>
internal static class ContactWords
{
    /// <summary>Contacts on one ring differ by less than this from each other in their distance to the centre, in millimetres.</summary>
    private const double SameRingMm = 0.05;

    /// <summary>What is on a terminal, a few words; empty where it is free.</summary>
    public static string WhatIsOn(AnalysisContext context, TerminalId terminal)
    {
        var words = context.WiresAt(terminal).Select(w => $"{w.Designator} to {Other(w, terminal)}")
            .Concat(context.NetsAt(terminal).Select(n => $"net {n.Name}"))
            .Concat(context.AttachmentsAt(terminal).Select(a => $"{a.Device}"))
            .Concat(context.AttachmentsOf(terminal).Select(a => $"inside at {a.Contact}"));
        var part = context.Part(terminal.Part);
        if (part is not null && part.Spares.Contains(terminal.Name)) words = words.Append("spare");
        if (part is not null && part.NotTraced.Contains(terminal.Name)) words = words.Append("not traced");
        return string.Join(", ", words);
    }

    /// <summary>The other end of a wire.</summary>
    public static TerminalId Other(Wire wire, TerminalId end) => wire.From == end ? wire.To : wire.From;

    /// <summary>
    /// Where a contact sits: ring and place on it where the arrangement is round, row and place in it otherwise, and the hour that
    /// it stands at, seen from the side where its wire is joined.
    /// </summary>
    public static string PlaceOn(Connector connector, string name)
    {
        var insert = connector.Insert;
        if (insert.Contacts.FirstOrDefault(c => c.Name == name) is not { } contact) return "";
        var isRound = insert.Family is "spiral" or "ring";
        var lines = insert.Contacts.Select(c => LineOf(c, isRound)).Distinct().Order().ToList();
        if (!isRound) lines.Reverse();
        var own = LineOf(contact, isRound);
        var fellows = insert.Contacts.Where(c => LineOf(c, isRound) == own).ToList();
        var view = connector.Gender == Gender.Pins ? FaceView.RearOfPins : FaceView.RearOfSockets;
        var x = view.IsMirrored() ? -contact.XMm : contact.XMm;
        var place = fellows.Count == 1 && isRound && own == 0
            ? $"at the centre (ring 1 of {Text(lines.Count)})"
            : $"{(isRound ? "ring" : "row")} {Text(lines.IndexOf(own) + 1)} of {Text(lines.Count)}, place {Text(fellows.IndexOf(contact) + 1)} of {Text(fellows.Count)} in it";
        return $"{place}; {Millimetres(x, "right", "left")} and {Millimetres(contact.YMm, "up", "down")} from the centre{HourOf(x, contact.YMm)}, seen on the {view.Words()} where its wire is joined";
    }

    private static double LineOf(ContactPosition contact, bool isRound) =>
        Math.Round((isRound ? Math.Sqrt((contact.XMm * contact.XMm) + (contact.YMm * contact.YMm)) : contact.YMm) / SameRingMm) * SameRingMm;

    private static string Millimetres(double value, string more, string less) =>
        $"{Math.Abs(value).ToString("0.0", CultureInfo.InvariantCulture)} mm {(value < 0 ? less : more)}";

    /// <summary>The hour of a clock dial; none near the centre.</summary>
    private static string HourOf(double x, double y)
    {
        if (Math.Abs(x) < 0.1 && Math.Abs(y) < 0.1) return "";
        var hour = (int)Math.Round(Math.Atan2(x, y) / (2 * Math.PI) * 12);
        return $" (at {Text(hour <= 0 ? hour + 12 : hour)} o'clock)";
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
