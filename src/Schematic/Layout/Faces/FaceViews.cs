using System.Collections.Immutable;
using Schematic.Bench.Record;
using Schematic.Drawing;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Faces;

/// <summary>One view of a face for a page: its marks from (0, 0) on and the room they take, in millimetres.</summary>
internal sealed record FaceViewMarks(ImmutableArray<Mark> Marks, double WidthMm, double HeightMm);

/// <summary>Both views of a connector's face by themselves, each as it is seen, in the same size so that one can be laid over the other.</summary>
internal sealed class FaceViews(Connector connector, ImmutableArray<ContactUse> uses, ImmutableDictionary<TerminalId, ContactProof> proofs)
{
    private const double MarginMm = 2;

    private readonly FaceScale _scale = FaceScale.For(connector, uses, FaceLettering.Choices[0], turned: false);

    /// <summary>The wire side.</summary>
    public FaceViewMarks Rear => Of(FaceWords.RearOf(connector));

    /// <summary>The mating side.</summary>
    public FaceViewMarks Front => Of(FaceWords.FrontOf(connector));

    private FaceViewMarks Of(Inserts.FaceView view)
    {
        var drawn = new FaceViewDrawing(connector, uses, proofs, _scale).Draw(view).At(MarginMm, MarginMm);
        return new FaceViewMarks(drawn.Marks, drawn.Width + (2 * MarginMm), drawn.Height + (2 * MarginMm));
    }
}
