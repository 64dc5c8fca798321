using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>What of an equipment stands on one sheet: all of it, or a run of its terminals or blocks where it is too large.</summary>
/// <param name="Equipment">What it belongs to.</param>
/// <param name="Number">Which piece it is, from one.</param>
/// <param name="Count">How many pieces there are.</param>
/// <param name="From">The first of the terminals or blocks that it shows.</param>
/// <param name="To">The one behind its last.</param>
internal sealed record Piece(Equipment Equipment, int Number, int Count, int From, int To)
{
    /// <summary>By its place alone, as <see cref="Link.GetHashCode"/> says.</summary>
    public override int GetHashCode() => HashCode.Combine(Equipment.Index, Number, From, To);

    /// <summary>
    /// The ends that it shows where not even one terminal after the other finds room, by terminal and in their order there; null: all ends
    /// of its terminals.
    /// </summary>
    public ILookup<TerminalId, LinkEnd>? Only { get; init; }

    /// <summary>Whether it is a place holder for what fits on no sheet at all.</summary>
    public bool IsPlaceHolder { get; init; }

    /// <summary>The ends at a terminal that the piece shows.</summary>
    public IEnumerable<LinkEnd> EndsAt(WiringMap map, TerminalId terminal) =>
        Only is { } only ? only[terminal] : map.EndsAt(terminal);

    /// <summary>Of terminals in order, those that it shows.</summary>
    public ImmutableArray<TerminalId> Of(WiringMap map, ImmutableArray<TerminalId> terminals) =>
        [.. terminals[Math.Min(From, terminals.Length)..Math.Min(To, terminals.Length)].Where(t => Only is not { } only || only.Contains(t))];

    /// <summary>The piece as a thing that another piece refers to.</summary>
    public Thing AsThing => ThingOf(Number);

    /// <summary>The units that the words above a piece of something larger take.</summary>
    public int HeadUnits => Count > 1 ? 3 : 0;

    /// <summary>The words above a piece of something larger; empty for a whole.</summary>
    public string Words => Count == 1 ? "" : $"{Equipment.Name} ({Number} of {Count}),";

    /// <summary>The piece that it goes on at; null for a whole.</summary>
    public PlaceReference? Continuation => Count == 1 ? null
        : Number < Count ? new PlaceReference(ThingOf(Number + 1)) { Before = "goes on at " }
        : new PlaceReference(ThingOf(1)) { Before = "begins at " };

    private Thing ThingOf(int number) => Thing.Part(Equipment.Name, $"{number} of {Count}");
}

/// <summary>Where a link meets a shape.</summary>
/// <param name="Terminal">The terminal whose symbol it meets.</param>
/// <param name="End">The link's end, or null where nothing but a remark stands.</param>
/// <param name="Side">The side that it leaves.</param>
/// <param name="Unit">Its height in units below the shape's top.</param>
/// <param name="Remark">What stands there when no link does, such as "spare".</param>
internal sealed record Port(TerminalId Terminal, LinkEnd? End, Side Side, int Unit, string Remark = "");
