namespace Schematic.Layout.Labels;

/// <summary>One label to be cut out and put on a wire or cable.</summary>
/// <param name="Wire">The wire's or cable's designator, printed first.</param>
/// <param name="Place">At an end the terminal that it goes to, else empty.</param>
public sealed record WireLabel(string Wire, string Place);
