using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// A joint inside a made unit: a device's terminal is wired to a connector's contact by whoever built the unit, as its
/// wiring diagram shows. It is not a wire of the harness.
/// </summary>
public sealed record Attachment(TerminalId Device, TerminalId Contact, SourceSpan Span);
