using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// A device of which the language has no kind: named terminals, and what is known between them. Of two terminals of which nothing
/// is stated nobody knows whether they are joined inside, and the proof takes both.
/// </summary>
public sealed record Device(string Designator, SourceSpan Span) : Part(Designator, Span)
{
    /// <summary>What it is drawn as.</summary>
    public DeviceForm Form { get; init; }

    /// <summary>Rated volts of its first pair of terminals, or null when unknown.</summary>
    public double? RatedVolts { get; init; }

    /// <summary>What a meter reads between two terminals with nothing else connected.</summary>
    public ImmutableArray<DeviceOhms> Resistances { get; init; } = [];

    /// <summary>Terminals that are always one.</summary>
    public ImmutableArray<TerminalPair> Bars { get; init; } = [];

    /// <summary>Terminals that are joined under a condition.</summary>
    public ImmutableArray<Pole> Contacts { get; init; } = [];

    /// <summary>Diodes, from anode to cathode.</summary>
    public ImmutableArray<DeviceDiode> Diodes { get; init; } = [];

    /// <summary>The ends of its coil, or null where it has none.</summary>
    public TerminalPair? CoilEnds { get; init; }

    /// <summary>Its coil, or null.</summary>
    public CoilData? Coil { get; init; }

    /// <summary>What two terminals stand.</summary>
    public ImmutableArray<DeviceLimit> Limits { get; init; } = [];

    /// <summary>Terminals that are surely not joined inside.</summary>
    public ImmutableArray<TerminalPair> OpenPairs { get; init; } = [];

    /// <summary>Whether all of which nothing is stated is surely not joined.</summary>
    public bool IsRestOpen { get; init; }

    /// <summary>The pairs of terminals of which nothing is stated: joined inside, or not.</summary>
    public IEnumerable<TerminalPair> UnknownPairs
    {
        get
        {
            if (IsRestOpen) return [];
            var stated = Resistances.Select(r => r.Ends).Concat(Bars).Concat(Diodes.Select(d => d.Ends)).Concat(OpenPairs)
                .Concat(CoilEnds is { } coil ? [coil] : [])
                .Concat(Contacts.SelectMany(c => c.Throws.Select(t => new TerminalPair(c.Common, t.Terminal))))
                .SelectMany(p => new[] { p, new TerminalPair(p.To, p.From) }).ToHashSet();
            return
                from i in Enumerable.Range(0, Terminals.Length)
                from j in Enumerable.Range(0, i)
                let pair = new TerminalPair(Terminals[j].Name, Terminals[i].Name)
                where !stated.Contains(pair)
                select pair;
        }
    }

    /// <inheritdoc/>
    public override ImmutableArray<Pole> ContactSets => Contacts;

    /// <inheritdoc/>
    public override ImmutableArray<TerminalPair> Branches =>
        [.. Resistances.Select(r => r.Ends), .. Diodes.Select(d => d.Ends), .. CoilEnds is { } coil ? new[] { coil } : []];

    /// <inheritdoc/>
    public override CoilData? Winding => Coil;

    /// <inheritdoc/>
    public override bool IsLoad => Coil is not null;

    /// <inheritdoc/>
    public override bool IsSymbol => true;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}

/// <summary>What a device is drawn as.</summary>
public enum DeviceForm
{
    /// <summary>A box with its terminals.</summary>
    Box,

    /// <summary>A synchro: rotor <c>R1</c> <c>R2</c>, stator <c>S1</c> <c>S2</c> <c>S3</c>.</summary>
    Synchro,
}

/// <summary>A resistance between two terminals of a device, as a meter reads it.</summary>
/// <param name="Ends">The terminals.</param>
/// <param name="Least">The least it may be, in ohms; null where it is not known.</param>
/// <param name="Most">The most it may be; as <paramref name="Least"/> where it is one figure.</param>
/// <param name="IsWinding">Whether it is a winding.</param>
public sealed record DeviceOhms(TerminalPair Ends, double? Least, double? Most, bool IsWinding)
{
    /// <summary>The resistance where it is one figure, or null.</summary>
    public double? Ohms => Least == Most ? Least : null;
}

/// <summary>A diode between two terminals of a device.</summary>
/// <param name="Ends">Anode and cathode.</param>
/// <param name="DropVolts">Forward drop where it is stated, or null.</param>
public sealed record DeviceDiode(TerminalPair Ends, double? DropVolts);

/// <summary>What two terminals of a device stand.</summary>
/// <param name="Ends">The terminals.</param>
/// <param name="Volts">The highest voltage between them, in either direction; null where it is not known.</param>
/// <param name="Amps">The highest current from one to the other, or null.</param>
public sealed record DeviceLimit(TerminalPair Ends, double? Volts, double? Amps);
