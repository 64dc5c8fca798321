using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>Anything with a designator that wires can end on.</summary>
/// <param name="Designator">The reference designator, unique in the panel: <c>J1</c>, <c>S3</c>, <c>LEVER2.DS1</c>.</param>
/// <param name="Span">Where the designator is declared.</param>
public abstract record Part(string Designator, SourceSpan Span)
{
    /// <summary>The user's words for it, printed beside the symbol; empty when none were given.</summary>
    public string Description { get; init; } = "";

    /// <summary>The part's terminals in their own order.</summary>
    public ImmutableArray<Terminal> Terminals { get; init; } = [];

    /// <summary>
    /// Terminals of which it is not known yet what they are joined to inside their unit: <c>not-traced</c> contacts of a
    /// connector, and terminals of a device whose contact is written <c>?</c>. They may be joined to anything, or to nothing.
    /// </summary>
    public ImmutableHashSet<string> NotTraced { get; init; } = [];

    /// <summary>
    /// Whether it is not known from which voltage or current it works: a lamp or a coil without a rating. It may count as
    /// energised or not whenever it gets something.
    /// </summary>
    public virtual bool IsRatingUnknown => Winding is { IsRatingUnknown: true };

    /// <summary>What the parts list calls it: the user's order text, or null to derive one from the data.</summary>
    public string? OrderText { get; init; }

    /// <summary>What one costs, or null when unknown.</summary>
    public Price? UnitPrice { get; init; }

    /// <summary>How many more to buy for the shelf, for the whole build.</summary>
    public int SparePieces { get; init; }

    /// <summary>Whether it is already there, as parts of a salvaged unit are: it is drawn but not bought.</summary>
    public bool OnHand { get; init; }

    /// <summary>Contacts or terminals left unused on purpose: never reported as floating.</summary>
    public ImmutableHashSet<string> Spares { get; init; } = [];

    /// <summary>What each of its contacts may carry, or null when unknown or where it has none.</summary>
    public ContactRating? Rating { get; init; }

    /// <summary>The moving contacts in it.</summary>
    public abstract ImmutableArray<Pole> ContactSets { get; }

    /// <summary>
    /// The pairs of its terminals with something between them other than a contact, such as a filament or a coil: both must
    /// lead somewhere for the part to work. A supply and an input board have none, for they are judged by themselves.
    /// </summary>
    public abstract ImmutableArray<TerminalPair> Branches { get; }

    /// <summary>The coil in it, or null.</summary>
    public abstract CoilData? Winding { get; }

    /// <summary>Whether somebody expects it to do something when it is fed, so that a claim may name it as energised.</summary>
    public abstract bool IsLoad { get; }

    /// <summary>Whether it is drawn as a symbol, not as a block of terminals.</summary>
    public abstract bool IsSymbol { get; }

    /// <summary>How many wires one of its terminals takes; three where nothing is stated (MIL-R-19309D 3.3.9.1).</summary>
    public virtual int WiresPerTerminal { get; init; } = 3;

    /// <summary>How it may stand where it has no one value; null for all others.</summary>
    public virtual Variation? Variation => null;

    /// <summary>Its two sides where they meet without a conductor and are drawn apart; none for all others.</summary>
    public virtual ImmutableArray<PartHalf> Halves => [];

    /// <summary>Asks for the answer that a visitor has for this kind of part.</summary>
    public abstract T Accept<T>(IPartVisitor<T> visitor);

    /// <summary>The identity of terminal <paramref name="name"/> on this part.</summary>
    public TerminalId At(string name) => new(Designator, name);
}
