using System.Collections.Immutable;
using Schematic.Inserts;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>A multi-contact connector. Its terminals are the contacts of its insert, in the insert's order.</summary>
public sealed record Connector(string Designator, InsertArrangement Insert, SourceSpan Span) : Part(Designator, Span)
{
    /// <summary>Pins or sockets.</summary>
    public Gender Gender { get; init; }

    /// <summary>Where the key stands on the drawing, in degrees clockwise from the top, seen in the canonical view.</summary>
    public double KeyDegrees { get; init; }

    /// <summary>The contact size in the trade's numbers ("20", "22D"), or null when not stated.</summary>
    public string? ContactSize { get; init; }

    /// <summary>Contacts whose size differs from <see cref="ContactSize"/>, by name.</summary>
    public ImmutableDictionary<string, string> OtherSizes { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>How wires are fastened.</summary>
    public Termination Termination { get; init; }

    /// <summary>The designator of the connector it plugs into, or null. Stated on one half or on both.</summary>
    public string? Mates { get; init; }

    /// <summary>Strip length in millimetres when the contact part states one.</summary>
    public double? StripMm { get; init; }

    /// <summary>The hole it needs in a panel, or null when not stated.</summary>
    public PanelCutout? Cutout { get; init; }

    /// <summary>The screw holes of its flange, or null when not stated.</summary>
    public FlangeHoles? Flange { get; init; }

    /// <summary>The size of contact <paramref name="name"/>, or null when not stated.</summary>
    public string? SizeOf(string name) => OtherSizes.GetValueOrDefault(name) ?? ContactSize;

    /// <inheritdoc/>
    public override ImmutableArray<Pole> ContactSets => [];

    /// <inheritdoc/>
    public override ImmutableArray<TerminalPair> Branches => [];

    /// <inheritdoc/>
    public override CoilData? Winding => null;

    /// <inheritdoc/>
    public override bool IsLoad => false;

    /// <inheritdoc/>
    public override bool IsSymbol => false;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
