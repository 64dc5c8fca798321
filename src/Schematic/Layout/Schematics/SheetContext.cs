using Schematic.Symbols;

namespace Schematic.Layout.Schematics;

/// <summary>What drawing a sheet needs besides the items.</summary>
internal sealed record SheetContext(CircuitMap Map, SymbolLibrary Symbols);
