using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Text;

namespace Schematic.Editor;

/// <summary>An entry in the outline of a file.</summary>
/// <param name="Name">What is declared.</param>
/// <param name="Kind">The word that declares it.</param>
/// <param name="Detail">The user's words for it; may be empty.</param>
/// <param name="Span">The whole statement.</param>
/// <param name="NameSpan">Where its name stands.</param>
/// <param name="Children">What stands in it: positions, cores.</param>
public sealed record OutlineEntry(
    string Name, string Kind, string Detail, TextSpan Span, TextSpan NameSpan, ImmutableArray<OutlineEntry> Children);

/// <summary>What a file declares, in the order of its text.</summary>
public sealed class Outline : IStatementVisitor<OutlineEntry?>
{
    private static readonly Outline Visitor = new();

    private Outline()
    {
    }

    /// <summary>The entries of a file.</summary>
    public static ImmutableArray<OutlineEntry> Of(PanelSyntax syntax) =>
        [.. syntax.Statements.Select(s => s.Accept(Visitor)).OfType<OutlineEntry>()];

    /// <inheritdoc/>
    public OutlineEntry? Visit(PartSyntax part) => Entry(part, part.Designator, part.Through, part.Description);

    /// <inheritdoc/>
    public OutlineEntry? Visit(ActuatorSyntax actuator) => Entry(
        actuator, actuator.Name, actuator.Through, actuator.Description,
        [.. actuator.Positions.Select(p => new OutlineEntry(p.Name.Text, "position", p.Rest is null ? "" : "rest", p.Name.Span, p.Name.Span, []))]);

    /// <inheritdoc/>
    public OutlineEntry? Visit(SwitchSyntax pole) => Entry(pole, pole.First, pole.Last, pole.Description);

    /// <inheritdoc/>
    public OutlineEntry? Visit(WireSyntax wire) => Entry(wire, wire.Name, wire.Through, null);

    /// <inheritdoc/>
    public OutlineEntry? Visit(CableSyntax cable) => Entry(
        cable, cable.Designator, cable.Through, cable.Description, [.. cable.Cores.Select(c => Entry(c, c.Name, c.Through, null))]);

    /// <inheritdoc/>
    public OutlineEntry? Visit(NetSyntax net) => Entry(net, net.Name, net.Through, null);

    /// <inheritdoc/>
    public OutlineEntry? Visit(UseSyntax use) => Entry(use, use.Name, null, use.Path);

    /// <inheritdoc/>
    public OutlineEntry? Visit(UnreadableSyntax unreadable) => Entry(unreadable, unreadable.First, unreadable.Last, null);

    /// <inheritdoc/>
    public OutlineEntry? Visit(LockSyntax actuatorLock) => null;

    /// <inheritdoc/>
    public OutlineEntry? Visit(ExpectSyntax expect) => null;

    /// <inheritdoc/>
    public OutlineEntry? Visit(NeverSyntax never) => null;

    /// <inheritdoc/>
    public OutlineEntry? Visit(PlaceSyntax place) => null;

    /// <inheritdoc/>
    public OutlineEntry? Visit(AlternativeSyntax alternative) => null;

    /// <inheritdoc/>
    public OutlineEntry? Visit(SettingSyntax setting) => null;

    private static OutlineEntry Entry(
        StatementSyntax statement, WordSyntax first, WordSyntax? last, WordSyntax? description, ImmutableArray<OutlineEntry> children = default) => new(
        last is null ? first.Text : $"{first.Text}..{last.Text}", statement.Keyword.Text, description?.Text ?? "", statement.Span, first.Span,
        children.IsDefault ? [] : children);
}
