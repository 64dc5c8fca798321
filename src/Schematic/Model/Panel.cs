using System.Collections.Immutable;

namespace Schematic.Model;

/// <summary>
/// Everything a panel file states, bound and checked for names: the one model that every check, sheet and list is made
/// from. Collections are in the order of the file; parts of a used file carry its prefix in their designators.
/// </summary>
public sealed record Panel
{
    /// <summary>Title block data.</summary>
    public TitleData Title { get; init; } = new();

    /// <summary>The sheet that is drawn on.</summary>
    public SheetSize Sheet { get; init; } = SheetSize.Find("A4", landscape: true)!;

    /// <summary>Which symbols are drawn.</summary>
    public SymbolStyle Symbols { get; init; }

    /// <summary>How many identical sets are built.</summary>
    public int BuildCount { get; init; } = 1;

    /// <summary>What wires are sized for.</summary>
    public DesignLimits Limits { get; init; } = new();

    /// <summary>Cautions the user adds to those that the program prints.</summary>
    public ImmutableArray<string> Cautions { get; init; } = [];

    /// <summary>Remarks printed on the first sheet.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>Readings files that are kept as the bench record.</summary>
    public ImmutableArray<KeptReadings> Readings { get; init; } = [];

    /// <summary>Levers, grips, buttons.</summary>
    public ImmutableArray<Actuator> Actuators { get; init; } = [];

    /// <summary>Locks on actuators.</summary>
    public ImmutableArray<ActuatorLock> Locks { get; init; } = [];

    /// <summary>Connectors, devices, boards, supplies, strips, splices.</summary>
    public ImmutableArray<Part> Parts { get; init; } = [];

    /// <summary>Cables; their cores are among <see cref="Wires"/>.</summary>
    public ImmutableArray<Cable> Cables { get; init; } = [];

    /// <summary>Joints inside made units.</summary>
    public ImmutableArray<Attachment> Attachments { get; init; } = [];

    /// <summary>Nets as stated.</summary>
    public ImmutableArray<Net> Nets { get; init; } = [];

    /// <summary>Wires and cable cores as stated.</summary>
    public ImmutableArray<Wire> Wires { get; init; } = [];

    /// <summary>What the user states to be true.</summary>
    public ImmutableArray<Expectation> Expectations { get; init; } = [];

    /// <summary>Where the user wants parts drawn.</summary>
    public ImmutableArray<PlaceHint> PlaceHints { get; init; } = [];

    /// <summary>Other ways to buy parts.</summary>
    public ImmutableArray<PartAlternative> Alternatives { get; init; } = [];

    /// <summary>The part with that designator, or null. Linear: index the parts where many are asked for.</summary>
    public Part? FindPart(string designator) => Parts.FirstOrDefault(p => p.Designator == designator);
}
