using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Analysis;

/// <summary>Two terminals that are joined whatever position anything stands in.</summary>
/// <param name="From">One terminal.</param>
/// <param name="To">The other.</param>
/// <param name="Kind">What joins them.</param>
/// <param name="Name">The wire's, net's, strip's or board's name; empty for attachments and mates.</param>
/// <param name="Span">Where the joint is stated.</param>
public sealed record Joint(TerminalId From, TerminalId To, JointKind Kind, string Name, SourceSpan Span)
{
    /// <summary>The terminal at the other end.</summary>
    public TerminalId Other(TerminalId end) => end == From ? To : From;

    /// <summary>What a path passes here.</summary>
    public PathOver Over => Kind switch
    {
        JointKind.Wire => PathOver.Wire,
        JointKind.Net => PathOver.Net,
        JointKind.Jumper => PathOver.Jumper,
        JointKind.BoardGround => PathOver.BoardGround,
        JointKind.Mate => PathOver.Mate,
        _ => PathOver.Attachment,
    };
}
