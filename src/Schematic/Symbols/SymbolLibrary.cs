using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Symbols;

/// <summary>
/// All graphic symbols in one style. They are our own drawings on a 2.5 mm module (ISO/IEC symbols share one module, from
/// memory), after what IEC 60617 and IEEE 315 say in words: ports on the grid, outlines 0.35 mm, two-port symbols 10 mm long.
/// </summary>
public sealed class SymbolLibrary
{
    private static readonly SymbolLibrary Iec = new(new IecSymbols());
    private static readonly SymbolLibrary Ieee = new(new IeeeSymbols());

    private readonly SymbolSet _set;
    private readonly ImmutableDictionary<SymbolKind, Symbol> _symbols;

    private SymbolLibrary(SymbolSet set)
    {
        _set = set;
        _symbols = Enum.GetValues<SymbolKind>().ToImmutableDictionary(k => k, set.Draw);
    }

    /// <summary>The library of that style.</summary>
    public static SymbolLibrary For(SymbolStyle style) => style == SymbolStyle.Ieee ? Ieee : Iec;

    /// <summary>The symbol of that kind.</summary>
    public Symbol Get(SymbolKind kind) => _symbols[kind];

    /// <summary>
    /// A box with named terminals: the first is the port at the origin, the others stand on the right, 5 mm apart from top to bottom
    /// around its height. Each name stands inside the box beside its lead; ports are called as the terminals.
    /// </summary>
    public static Symbol Block(ImmutableArray<string> names) => SymbolSet.Block(names);

    /// <summary>
    /// A contact with one common, port C at the origin, and ports 1 to <paramref name="throws"/> on the right, 5 mm apart from
    /// top to bottom around the common's height.
    /// </summary>
    /// <param name="throws">How many throws, at least one.</param>
    /// <param name="closedAtRest">Which throw the blade rests on, from zero; null when it rests on none.</param>
    public Symbol RotaryContact(int throws, int? closedAtRest = 0) => _set.Rotary(throws, closedAtRest);

    /// <summary>
    /// A contact of a part, lying, with the sign of what is special about it: delays of a relay, the tube of a reed, the trip of a
    /// microswitch.
    /// </summary>
    public Symbol ContactOf(Symbol contact, Part part, Pole pole)
    {
        if (part is Relay relay && relay.IsDelayed(pole.Common)) return _set.Delayed(contact, relay.OnDelay is not null, relay.OffDelay is not null);
        return OfKind(contact, part is Switch own ? own.Kind : SwitchKind.Plain);
    }

    /// <summary>A lying contact with the sign of how it is built.</summary>
    public Symbol OfKind(Symbol contact, SwitchKind kind) => kind switch
    {
        SwitchKind.Reed => SymbolSet.Reed(contact),
        SwitchKind.Micro => _set.Tripped(contact),
        _ => contact,
    };

    /// <summary>A lying contact of which the operating or the releasing is delayed, or both.</summary>
    public Symbol Delayed(Symbol contact, bool operating, bool releasing) => _set.Delayed(contact, operating, releasing);
}
