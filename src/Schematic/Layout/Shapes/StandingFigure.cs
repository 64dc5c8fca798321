using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Model;

namespace Schematic.Layout.Shapes;

/// <summary>
/// A figure that stands upright, all its ends leading to one side, one below the other: its words stand between its first two
/// leads.
/// </summary>
/// <param name="Figure">The device or contact set.</param>
/// <param name="EndUnits">How far each end's lead stands below the figure's first one, in units.</param>
/// <param name="Units">Units from its first lead to below its last row.</param>
/// <param name="Words">Quiet words beside the symbol.</param>
/// <param name="FrontMm">Room that the symbol and its words need from its axis to the cells.</param>
internal sealed record StandingFigure(
    Figure Figure, ImmutableArray<int> EndUnits, int Units, ImmutableArray<string> Words, double FrontMm)
{
    private const double TextBlank = 1.2;

    /// <summary>Measures it.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="rowsOf">How many rows each terminal's cell takes.</param>
    /// <param name="showsName">Whether the figure's own name stands beside it.</param>
    /// <param name="words">Quiet words below the name.</param>
    /// <param name="wordsMm">Where they are wrapped.</param>
    public static StandingFigure Measure(
        Figure figure, Func<TerminalId, int> rowsOf, bool showsName, IEnumerable<string> words, double wordsMm)
    {
        ImmutableArray<string> lines = [.. words.Where(w => w.Length > 0).SelectMany(w => Lettering.Wrap(w, Metrics.QuietHeight, wordsMm, Metrics.MostWordLines))];
        var hasLabels = figure.Ends.Length > 2;
        // Name and words between the first two leads, the second lead's own label above it.
        var textMm = (showsName ? 3.9 : 0.8) + (lines.Length * Metrics.QuietStep) + (hasLabels ? Metrics.Rise + Metrics.QuietHeight : 0.8);
        var apart = Math.Max(Metrics.Units(Math.Max(figure.Length, textMm)), Metrics.Row * rowsOf(figure.Ends[0].Terminal));
        var units = ImmutableArray.CreateBuilder<int>();
        units.Add(0);
        var next = apart;
        foreach (var end in figure.Ends.Skip(1))
        {
            units.Add(next);
            next += Metrics.Row * rowsOf(end.Terminal);
        }

        var upright = figure.Symbol.Turned();
        var front = Math.Max(2.5, upright.Bounds.Right);
        var text = lines.Select(l => Lettering.WidthMm(l, Metrics.QuietHeight)).DefaultIfEmpty(0).Max();
        if (showsName) text = Math.Max(text, Lettering.WidthMm(figure.Name, Metrics.NameHeight, bold: true));
        if (hasLabels) text = Math.Max(text, figure.Ends.Max(e => Lettering.WidthMm(e.Label, Metrics.QuietHeight)));
        return new StandingFigure(figure, units.ToImmutable(), next, lines, front + TextBlank + text + (text > 0 ? TextBlank : 0))
        {
            ShowsName = showsName,
        };
    }

    /// <summary>Whether its name stands beside it.</summary>
    public bool ShowsName { get; init; }

    /// <summary>Room that the symbol needs behind its axis.</summary>
    public double BackMm => Math.Max(1, -Figure.Symbol.Turned().Bounds.Left);

    /// <summary>Draws it, its axis at <paramref name="axis"/>, its leads ending at <paramref name="cells"/>.</summary>
    public void Draw(Canvas canvas, double axis, double cells, double y)
    {
        var way = Math.Sign(cells - axis);
        var turned = way > 0 ? Figure.Symbol.Turned() : Figure.Symbol.Turned().Mirrored();
        canvas.Add(turned.PlacedAt(new PointMm(axis, y), Figure.Part.Designator, Figure.PoleIn(turned)));
        for (var i = 0; i < Figure.Ends.Length; i++)
        {
            var end = Figure.Ends[i];
            var port = turned.Port(end.Port).At.Moved(axis, y);
            var row = y + (EndUnits[i] * Metrics.Unit);
            canvas.Wire(end.Terminal.ToString(), port, new(port.X, row), new PointMm(cells, row));
            if (Figure.Ends.Length > 2 && i > 0)
                canvas.Text(Figure.Part.Designator, end.Label, cells - (way * TextBlank), row - Metrics.Rise, Metrics.QuietHeight, way > 0 ? TextAlign.End : TextAlign.Start);
        }

        var x = axis + (way * (Math.Max(2.5, Figure.Symbol.Turned().Bounds.Right) + TextBlank));
        var align = way > 0 ? TextAlign.Start : TextAlign.End;
        if (ShowsName) canvas.Text(Figure.Part.Designator, Figure.Name, x, y + 3.4, align: align, bold: true);
        canvas.QuietLines(Figure.Part.Designator, Words, x, y + (ShowsName ? 3.5 : 0.2) + Metrics.QuietStep, align);
    }
}
