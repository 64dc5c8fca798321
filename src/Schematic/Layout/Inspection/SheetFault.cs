using Schematic.Drawing;

namespace Schematic.Layout.Inspection;

/// <summary>One thing that is wrong, and where.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="At">Where on the sheet.</param>
/// <param name="First">What lies there: a text, or whose the mark is.</param>
/// <param name="Second">What else lies there, or empty.</param>
public sealed record SheetFault(SheetFaultKind Kind, PointMm At, string First, string Second)
{
    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant($"{Kind} at {At.X:0.0}, {At.Y:0.0}: {First} / {Second}");
}
