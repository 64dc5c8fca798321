using System.Collections.Immutable;

namespace Schematic.Drawing;

/// <summary>
/// The contact set that a switching symbol shows, so that a page can draw it as it stands at the moment. Places are against the
/// point where the common's conductor meets the symbol, in millimetres.
/// </summary>
/// <param name="Common">The common's terminal, as it is written: <c>S1:common</c>.</param>
/// <param name="Throws">The throws that the symbol shows, each with the place where its conductor meets the symbol.</param>
public sealed record DrawnPole(string Common, ImmutableArray<DrawnThrow> Throws);

/// <summary>A throw of a drawn contact set.</summary>
/// <param name="Terminal">Its terminal, as it is written.</param>
/// <param name="At">Where its conductor meets the symbol.</param>
public readonly record struct DrawnThrow(string Terminal, PointMm At);
