using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>Something that stands on a wiring sheet as one: wires end on its terminals.</summary>
/// <param name="Index">Its place among the things, in the order of the file.</param>
/// <param name="Parts">The parts it is made of, the one it is named after first.</param>
internal abstract record Equipment(int Index, ImmutableArray<Part> Parts)
{
    /// <summary>What a title and a continuation call it.</summary>
    public virtual string Name => Parts[0].Designator;

    /// <summary>The word for its kind in the sheet's title.</summary>
    public abstract string Word { get; }

    /// <summary>Whether wires may leave it on both sides.</summary>
    public virtual bool IsTwoSided => false;

    /// <summary>Whether it may be drawn in several pieces when it is larger than a sheet.</summary>
    public virtual bool IsDivisible => false;

    /// <summary>How many terminals it has.</summary>
    public int TerminalCount => Parts.Sum(p => p.Terminals.Length);
}

/// <summary>A made unit: connectors, the devices that are wired to them inside, and the plugs on the connectors.</summary>
internal sealed record UnitEquipment(int Index, ImmutableArray<Connector> Connectors, ImmutableArray<Part> Devices)
    : Equipment(Index, [.. Connectors, .. Devices])
{
    /// <inheritdoc/>
    public override string Word => "unit";

    /// <inheritdoc/>
    public override bool IsTwoSided => true;

    /// <inheritdoc/>
    public override bool IsDivisible => Connectors.Sum(c => c.Terminals.Length) >= WiringWeights.LeastDivided;

    /// <summary>What stands at the head of its frame.</summary>
    public string Heading => string.Join(", ", Connectors.Select(c =>
        c.Description.Length == 0 ? c.Designator : $"{c.Designator} {c.Description}"));
}

/// <summary>Two connectors plugged into each other, drawn face to face.</summary>
/// <param name="Index">Its place among the things.</param>
/// <param name="Near">The half that wires end on.</param>
/// <param name="Beyond">The other half.</param>
/// <param name="AreBothWired">Whether wires end on both halves.</param>
internal sealed record PairEquipment(int Index, Connector Near, Connector Beyond, bool AreBothWired) : Equipment(Index, [Near, Beyond])
{
    /// <inheritdoc/>
    public override string Word => "connectors";

    /// <inheritdoc/>
    public override string Name => $"{Near.Designator} {Beyond.Designator}";

    /// <inheritdoc/>
    public override bool IsTwoSided => AreBothWired;

    /// <inheritdoc/>
    public override bool IsDivisible => Near.Terminals.Length >= WiringWeights.LeastDivided;
}

/// <summary>A terminal strip.</summary>
internal sealed record StripEquipment(int Index, TerminalStrip Strip) : Equipment(Index, [Strip])
{
    /// <inheritdoc/>
    public override string Word => "strip";

    /// <inheritdoc/>
    public override bool IsTwoSided => true;

    /// <inheritdoc/>
    public override bool IsDivisible => Strip.Terminals.Length >= WiringWeights.LeastDivided;
}

/// <summary>A joint of several wires.</summary>
internal sealed record SpliceEquipment(int Index, Splice Splice) : Equipment(Index, [Splice])
{
    /// <inheritdoc/>
    public override string Word => "splice";

    /// <inheritdoc/>
    public override bool IsTwoSided => true;
}

/// <summary>A box with terminals: a board, a supply, a connector that is plugged into nothing.</summary>
internal sealed record BoxEquipment(int Index, Part Part) : Equipment(Index, [Part])
{
    /// <inheritdoc/>
    public override string Word => PartFacts.Of(Part).Word;

    /// <inheritdoc/>
    public override bool IsDivisible => Part is Connector && Part.Terminals.Length >= WiringWeights.LeastDivided;
}

/// <summary>A device that sits in no unit, drawn by its symbols with a cell for each terminal.</summary>
internal sealed record DeviceEquipment(int Index, Part Part) : Equipment(Index, [Part])
{
    /// <inheritdoc/>
    public override string Word => PartFacts.Of(Part).Word;
}

/// <summary>Poles that one actuator moves and that sit in no unit.</summary>
internal sealed record GangEquipment(int Index, Actuator Actuator, ImmutableArray<Switch> Poles) : Equipment(Index, [.. Poles])
{
    /// <inheritdoc/>
    public override string Word => Poles.Length > 1 ? "gang" : "switch";

    /// <inheritdoc/>
    public override string Name => Poles.Length == 1 ? Poles[0].Designator : $"{Poles[0].Designator}..{Poles[^1].Designator}";

    /// <inheritdoc/>
    public override bool IsDivisible => TerminalCount >= WiringWeights.LeastDivided;
}
