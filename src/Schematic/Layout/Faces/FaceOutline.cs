using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Inserts;

namespace Schematic.Layout.Faces;

/// <summary>
/// The outline around the contacts of an insert and its key, in millimetres of the view: x to the right, y up. It is computed
/// from the contacts; the part's own shell is larger.
/// </summary>
internal sealed class FaceOutline
{
    private readonly InsertArrangement _insert;
    private readonly FaceView _view;
    private readonly double _keyDegrees;
    private readonly double _margin;

    public FaceOutline(InsertArrangement insert, FaceView view, double keyDegrees, double marginMm)
    {
        _insert = insert;
        _view = view;
        _keyDegrees = keyDegrees;
        _margin = marginMm;
    }

    /// <summary>Radius of a round outline.</summary>
    public double RadiusMm => _insert.Contacts.Max(c => Math.Sqrt((c.XMm * c.XMm) + (c.YMm * c.YMm))) + _margin;

    /// <summary>A D shape is its own key.</summary>
    public bool HasKey => _insert.Outline != InsertOutline.DShape;

    public bool IsRound => _insert.Outline == InsertOutline.Round;

    /// <summary>Where the key touches the outline, and the direction outward from there.</summary>
    public ((double X, double Y) At, (double X, double Y) Outward) Key
    {
        get
        {
            var box = Extent();
            var at = IsRound ? (X: 0.0, Y: RadiusMm) : (X: (box.Left + box.Right) / 2, Y: box.Bottom);
            return (Seen(at.X, at.Y), FaceGeometry.Project(0, 1, _view, _keyDegrees));
        }
    }

    /// <summary>The corners of an outline that is not round.</summary>
    public ImmutableArray<(double X, double Y)> Corners()
    {
        var box = Extent();
        var slant = _insert.Outline == InsertOutline.DShape ? SlantMm(box) : 0;
        return
        [
            Seen(box.Left - slant, box.Bottom), Seen(box.Right + slant, box.Bottom),
            Seen(box.Right, box.Top), Seen(box.Left, box.Top),
        ];
    }

    /// <summary>The box around the outline in the view: Top is the lower edge there, because y runs up.</summary>
    public BoxMm Bounds()
    {
        if (IsRound) return new BoxMm(-RadiusMm, -RadiusMm, RadiusMm, RadiusMm);
        var corners = Corners();
        return new BoxMm(corners.Min(c => c.X), corners.Min(c => c.Y), corners.Max(c => c.X), corners.Max(c => c.Y));
    }

    /// <summary>The contacts' box grown by the margin, canonical view: Top is the lower edge.</summary>
    private BoxMm Extent()
    {
        var c = _insert.Contacts;
        return new BoxMm(c.Min(p => p.XMm), c.Min(p => p.YMm), c.Max(p => p.XMm), c.Max(p => p.YMm)).Grown(_margin);
    }

    /// <summary>The sides of a D shape lean by ten degrees (from memory); the wide side is on the side of row 1.</summary>
    private static double SlantMm(BoxMm box) => box.Height * Math.Tan(10 * Math.PI / 180);

    private (double X, double Y) Seen(double x, double y) => FaceGeometry.Project(x, y, _view, _keyDegrees);
}
