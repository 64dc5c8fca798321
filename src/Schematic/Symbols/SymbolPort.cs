using Schematic.Drawing;

namespace Schematic.Symbols;

/// <summary>Where a conductor meets a symbol. Ports lie on the 2.5 mm grid.</summary>
public sealed record SymbolPort(string Name, PointMm At, PortSide Side);
