using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Circuits;

/// <summary>
/// Draws leads: the small marks on a line between where it leaves its node and the symbol. The origin lies on the node's line;
/// a lead of a link below grows downwards, one of a link above upwards.
/// </summary>
internal sealed class LeadArt(CircuitMap map, CircuitMeasures measures)
{
    /// <summary>From the middle of a contact to the middle of its sign.</summary>
    public const double ProofGap = 2.3;

    private readonly Dictionary<string, Wire> _wires = map.Panel.Wires.DistinctBy(w => w.Designator).ToDictionary(w => w.Designator, StringComparer.Ordinal);

    /// <summary>Draws one lead.</summary>
    /// <param name="lead">The lead.</param>
    /// <param name="terminal">The terminal of the symbol that it leads to.</param>
    /// <param name="way">1 downwards, -1 upwards.</param>
    /// <param name="isOnLine">Whether the node has a line, on which the terminal where the lead leaves it is drawn.</param>
    public Art Of(Lead lead, TerminalId terminal, int way, bool isOnLine)
    {
        var drawing = new ArtDrawing(measures);
        if (lead.Steps.IsEmpty)
        {
            drawing.Wire(terminal.ToString(), new(0, isOnLine ? way * StartAt(lead.Mark) : 0), new(0, way * measures.Stub));
            return drawing.Done(measures.Stub);
        }

        var at = 0.0;
        for (var i = 0; i < lead.Steps.Length; i++)
        {
            var step = lead.Steps[i];
            var isLast = i == lead.Steps.Length - 1;
            var isAboveLine = i == 0 && isOnLine && way < 0 && step.Joint?.Kind is JointKind.Wire or JointKind.Net;
            var length = LengthOf(step) + (i == 0 && isOnLine && IsMarked(step.Near) ? measures.BesideMark : 0) + (isAboveLine ? measures.AboveLine : 0);
            if (step.Joint?.Kind == JointKind.Mate) DrawPair(drawing, step, at, at + length, way, isFirst: i == 0 && isOnLine);
            else DrawStep(drawing, step, (at, at + length), way, i > 0 || isOnLine, isLast, isAboveLine ? measures.AboveLine / 2 : 0);
            at += length;
            var isPaired = step.Joint?.Kind == JointKind.Mate || (!isLast && lead.Steps[i + 1].Joint?.Kind == JointKind.Mate);
            if (!isLast && !isPaired) DrawMark(drawing, step.Far, 0, way * at);
        }

        return drawing.Done(at);
    }

    /// <summary>Whether a terminal of this kind has a mark of its own on a line.</summary>
    public bool IsMarked(TerminalId terminal) => MarkOf(terminal) != TerminalMark.None;

    private TerminalMark MarkOf(TerminalId terminal) => TerminalMarks.Of(map.Part(terminal.Part));

    /// <summary>How far from a terminal's middle its wires begin.</summary>
    public double StartAt(TerminalId terminal) => MarkOf(terminal) == TerminalMark.Circle ? measures.TerminalRadius : 0;

    /// <summary>The mark of a terminal on a vertical line, its name on the left.</summary>
    public void DrawMark(ArtDrawing drawing, TerminalId terminal, double x, double y)
    {
        DrawSymbol(drawing, terminal, x, y);
        if (IsMarked(terminal)) drawing.Name(terminal, NameOf(terminal), x - measures.MarkGap, y + (measures.Name / 2), TextAlign.End);
    }

    /// <summary>The symbol of a terminal alone.</summary>
    public void DrawSymbol(ArtDrawing drawing, TerminalId terminal, double x, double y)
    {
        var owner = terminal.ToString();
        switch (MarkOf(terminal))
        {
            case TerminalMark.Circle:
                drawing.Add(new CircleMark(MarkRole.Symbol, new PointMm(x, y), measures.TerminalRadius, Pen.Wide) { Fill = Ink.White, Owner = owner });
                break;
            case TerminalMark.Diamond:
                drawing.Add(new LineMark(MarkRole.Symbol, [new(x - 1.1, y), new(x, y - 1.1), new(x + 1.1, y), new(x, y + 1.1)], Pen.Narrow)
                {
                    IsClosed = true, Fill = Ink.Black, Owner = owner,
                });
                break;
            case TerminalMark.Contact:
                drawing.Add(LineMark.Rectangle(MarkRole.Symbol, new BoxMm(x - 0.45, y - 1.2, x + 0.45, y + 1.2), Pen.Narrow, map.Part(terminal.Part) is Connector { Gender: Gender.Sockets } ? Ink.White : Ink.Black) with { Owner = owner });
                DrawProof(drawing, terminal, x + ProofGap, y);
                break;
            case TerminalMark.None:
            default:
                break;
        }
    }

    /// <summary>How far a contact was proved with the meter, where that is known.</summary>
    public void DrawProof(ArtDrawing drawing, TerminalId terminal, double x, double y)
    {
        if (!map.Proofs.TryGetValue(terminal, out var proof)) return;
        foreach (var mark in ProofSign.Draw(proof, new PointMm(x, y), ProofSign.UsualMm, MarkRole.Symbol, terminal.ToString())) drawing.Add(mark);
    }

    /// <summary>What a terminal is called on a line: a splice has one terminal and goes by its own name.</summary>
    public string NameOf(TerminalId terminal)
    {
        var part = map.Part(terminal.Part);
        if (part is Splice splice) return splice.Designator;
        if (part is FarEnd end) return $"{end.Designator}: far end not traced";
        return part is not null && part.NotTraced.Contains(terminal.Name) ? $"{terminal} ? not traced" : terminal.ToString();
    }

    /// <summary>Number, colour and gauge of a wire from x on, its letters on the base line y; returns the width.</summary>
    public double DrawWireName(ArtDrawing drawing, Joint joint, double x, double y)
    {
        drawing.Name(joint.Name, joint.Name, x, y, bold: joint.Kind == JointKind.Net, subject: ThingOf(joint));
        var width = Fonts.Lettering.WidthMm(joint.Name, measures.Name, joint.Kind == JointKind.Net);
        if (joint.Kind != JointKind.Wire || !_wires.TryGetValue(joint.Name, out var wire)) return width;
        var data = PartWords.Of(wire);
        if (data.Length == 0) return width;
        drawing.Name(joint.Name, data, x + width + measures.TextGap, y);
        return width + measures.TextGap + Fonts.Lettering.WidthMm(data, measures.Name);
    }

    public static Thing? ThingOf(Joint? joint) => joint?.Kind switch
    {
        JointKind.Wire => new Thing(ThingKind.Wire, joint.Name),
        JointKind.Net => new Thing(ThingKind.Net, joint.Name),
        _ => null,
    };

    private double LengthOf(LeadStep step) => step.Joint?.Kind switch
    {
        JointKind.Mate => measures.PairStep,
        JointKind.Wire => measures.WireStep,
        JointKind.Attachment or JointKind.BoardGround => IsMarked(step.Near) && IsMarked(step.Far) ? measures.Step : measures.InsideStep,
        _ => measures.Step,
    };

    /// <summary>One step of a lead; its words stand <paramref name="lift"/> beyond the middle of the piece.</summary>
    private void DrawStep(ArtDrawing drawing, LeadStep step, (double From, double To) piece, int way, bool beginsAtMark, bool isLast, double lift)
    {
        var (from, to) = piece;
        var middle = (from + to) / 2;
        drawing.WireOf(ThingOf(step.Joint), step.Near.ToString(), new(0, way * (from + (beginsAtMark ? StartAt(step.Near) : 0))), new(0, way * middle));
        drawing.WireOf(ThingOf(step.Joint), step.Far.ToString(), new(0, way * middle), new(0, way * (to - (isLast ? 0 : StartAt(step.Far)))));
        if (step.Joint is { Kind: JointKind.Wire or JointKind.Net } joint)
            DrawWireBeside(drawing, joint, way * (middle + lift));
    }

    /// <summary>Number, colour and gauge beside the middle of a wire's piece of line.</summary>
    private void DrawWireBeside(ArtDrawing drawing, Joint joint, double middle)
    {
        if (!measures.WireInTwoLines || joint.Kind != JointKind.Wire)
        {
            DrawWireName(drawing, joint, measures.TextGap, middle + (measures.Name / 2) - 0.2);
            return;
        }

        drawing.Name(joint.Name, joint.Name, measures.TextGap, middle - 0.6, subject: ThingOf(joint));
        if (_wires.TryGetValue(joint.Name, out var wire)) drawing.Name(joint.Name, PartWords.Of(wire), measures.TextGap, middle - 0.6 + measures.NameStep);
    }

    /// <summary>A plug's contact in its socket, both named on the left.</summary>
    private void DrawPair(ArtDrawing drawing, LeadStep step, double from, double to, int way, bool isFirst)
    {
        const double radius = 1.5;
        const double pin = 3;
        var middle = way * ((from + to) / 2);
        var (upper, lower) = way > 0 ? (step.Near, step.Far) : (step.Far, step.Near);
        var (top, bottom) = way > 0 ? (from, to) : (-to, -from);
        var pinIsBelow = IsPin(lower) || !IsPin(upper);
        var (pinned, socket) = pinIsBelow ? (lower, upper) : (upper, lower);
        var sign = pinIsBelow ? 1 : -1;
        drawing.Add(new ArcMark(MarkRole.Symbol, new PointMm(0, middle), radius, pinIsBelow ? 180 : 0, 180, Pen.Wide) { Owner = socket.ToString() });
        drawing.Add(LineMark.Rectangle(MarkRole.Symbol, BoxOf(-0.45, middle - (0.2 * sign), 0.45, middle + (pin * sign)), Pen.Narrow, Ink.Black) with { Owner = pinned.ToString() });
        var (upperEnd, lowerEnd) = pinIsBelow ? (middle - radius, middle + pin) : (middle - pin, middle + radius);
        drawing.Wire(upper.ToString(), new(0, top + (way > 0 && isFirst ? StartAt(upper) : 0)), new(0, upperEnd));
        drawing.Wire(lower.ToString(), new(0, lowerEnd), new(0, bottom - (way < 0 && isFirst ? StartAt(lower) : 0)));
        drawing.Name(upper, NameOf(upper), -radius - 0.6, middle - 0.9, TextAlign.End);
        drawing.Name(lower, NameOf(lower), -radius - 0.6, middle + 3.2, TextAlign.End);
        DrawProof(drawing, upper, radius + ProofGap, middle - 2);
        DrawProof(drawing, lower, radius + ProofGap, middle + 2);
    }

    private bool IsPin(TerminalId terminal) => map.Part(terminal.Part) is Connector { Gender: Gender.Pins };

    private static BoxMm BoxOf(double x1, double y1, double x2, double y2) => new(x1, Math.Min(y1, y2), x2, Math.Max(y1, y2));
}
