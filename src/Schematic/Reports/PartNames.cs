using Schematic.Model;

namespace Schematic.Reports;

/// <summary>What a list calls a part: the user's order text, or words made from the part's data.</summary>
public static class PartNames
{
    /// <summary>The words for a part.</summary>
    public static string Of(Part part) => part.OrderText ?? part switch
    {
        Connector c => Joined($"connector, {c.Terminals.Length} {GenderWord(c.Gender)}", $"{c.Insert.Family}", Size(c), TerminationWord(c.Termination)),
        Lamp l => Joined($"lamp {ValueText.Volts(l.RatedVolts)} {ValueText.Amps(l.RatedAmps)}", l.Colour?.ToString()),
        Led l => Joined($"LED {ValueText.Volts(l.ForwardVolts)} {ValueText.Amps(l.RatedAmps)}", l.Colour?.ToString()),
        Solenoid s => $"solenoid {ValueText.Volts(s.Coil.RatedVolts)} {ValueText.Amps(s.Coil.RatedAmps)}",
        Relay r => Joined($"relay {ValueText.Volts(r.Coil.RatedVolts)}", Forms(r), Rating(r.Rating)),
        Resistor r => Joined($"resistor {ValueText.Ohms(r.Ohms)}", r.RatedWatts is { } w ? ValueText.Watts(w) : null),
        Diode d => Joined("diode", d.MaxAmps is { } a ? ValueText.Amps(a) : null, d.ReverseVolts is { } v ? ValueText.Volts(v) : null),
        Fuse f => $"fuse {ValueText.Amps(f.RatedAmps)}{(f.IsSlow ? ", slow" : "")}",
        Breaker b => $"circuit breaker {ValueText.Amps(b.RatedAmps)}",
        Supply s => Joined(SupplyText(s), s.LimitAmps is { } a ? ValueText.Amps(a) : null),
        Switch s => Joined($"switch, {FormWord(s.Form)}", Rating(s.Rating)),
        Board b => $"input board, {b.Inputs.Length} inputs",
        TerminalStrip t => $"terminal strip, {t.Terminals.Length} terminals",
        Splice => "splice",
        _ => part.Description,
    };

    /// <summary>The words for a cable.</summary>
    public static string Of(Cable cable) =>
        cable.OrderText ?? $"cable, {cable.Cores.Length} cores{(cable.HasScreen ? ", screened" : "")}";

    /// <summary>A form of contact in words.</summary>
    public static string FormWord(ContactForm form) => form switch
    {
        ContactForm.Make => "make",
        ContactForm.Break => "break",
        ContactForm.Changeover => "changeover",
        _ => "rotary",
    };

    private static string GenderWord(Gender gender) => gender switch
    {
        Gender.Pins => "pins",
        Gender.Sockets => "sockets",
        _ => "contacts",
    };

    private static string? TerminationWord(Termination termination) =>
        termination == Termination.Unstated ? null : termination.ToString().ToLowerInvariant();

    private static string? Size(Connector c) => c.ContactSize is { } size ? $"size {size}" : null;

    private static string Forms(Relay relay) => string.Join(
        ", ", relay.Poles.GroupBy(p => p.Form).Select(g => $"{g.Count()} {FormWord(g.Key)}"));

    private static string? Rating(ContactRating? rating) => rating is null ? null
        : rating.Volts is { } volts ? $"{ValueText.Volts(volts)} {ValueText.Amps(rating.Amps)}" : ValueText.Amps(rating.Amps);

    private static string SupplyText(Supply s) => s.IsAdjustable
        ? $"supply {ValueText.Number(s.MinVolts)}..{ValueText.Volts(s.MaxVolts)}"
        : $"supply {ValueText.Volts(s.Volts)}{(s.IsAlternating ? " AC" : "")}";

    private static string Joined(params IEnumerable<string?> parts) => string.Join(", ", parts.Where(p => !string.IsNullOrEmpty(p)));
}
