namespace Schematic.Inserts;

/// <summary>One step of the guide line, from a contact to the next in the order of numbering.</summary>
/// <param name="From">The contact it leaves.</param>
/// <param name="To">The contact it reaches.</param>
/// <param name="IsJump">Whether the step is so long that the eye could lose it: drawn with a visible break.</param>
public sealed record GuideSegment(ContactPosition From, ContactPosition To, bool IsJump);
