using System.Text;
using ApprovalTests;
using Schematic.Drawing;
using Schematic.Model;
using Schematic.Rendering;
using Schematic.Symbols;
using Xunit;

namespace Schematic.Tests.Symbols;

public class SymbolLibraryTests
{
    /// <summary>Every symbol in both styles.</summary>
    public static TheoryData<SymbolStyle, SymbolKind> All()
    {
        var data = new TheoryData<SymbolStyle, SymbolKind>();
        foreach (var style in Enum.GetValues<SymbolStyle>())
        {
            foreach (var kind in Enum.GetValues<SymbolKind>()) data.Add(style, kind);
        }

        return data;
    }

    [Fact]
    public void Both_styles_side_by_side_look_as_approved() =>
        Approvals.VerifyBinaryFile(Encoding.UTF8.GetBytes(SvgWriter.Write(SymbolSheet.Build())), "svg");

    [Theory]
    [MemberData(nameof(All))]
    public void Ports_lie_on_the_grid_and_the_first_at_the_origin(SymbolStyle style, SymbolKind kind)
    {
        var symbol = SymbolLibrary.For(style).Get(kind);
        Assert.Equal(kind, symbol.Kind);
        Assert.Equal(new PointMm(0, 0), symbol.Ports[0].At);
        Assert.All(symbol.Ports, p => Assert.True(p.At.X % 2.5 == 0 && p.At.Y % 2.5 == 0, $"{p.Name} at {p.At}"));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void A_line_or_circle_meets_every_port_and_ports_lie_on_the_side_they_name(SymbolStyle style, SymbolKind kind)
    {
        var symbol = SymbolLibrary.For(style).Get(kind);
        foreach (var port in symbol.Ports)
        {
            Assert.Contains(symbol.Marks, m => Meets(m, port.At));
            if (kind is SymbolKind.Terminal or SymbolKind.Splice) continue;
            var edge = port.Side switch
            {
                PortSide.Left => port.At.X - symbol.Bounds.Left,
                PortSide.Right => port.At.X - symbol.Bounds.Right,
                PortSide.Top => port.At.Y - symbol.Bounds.Top,
                _ => port.At.Y - symbol.Bounds.Bottom,
            };
            Assert.Equal(0, edge, 6);
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Lines_have_widths_and_letters_have_heights_of_the_standard_rows(SymbolStyle style, SymbolKind kind)
    {
        // ISO 128 line widths and ISO 3098 lettering heights.
        double[] widths = [0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2];
        double[] heights = [1.8, 2.5, 3.5, 5, 7, 10, 14, 20];
        foreach (var mark in SymbolLibrary.For(style).Get(kind).Marks)
        {
            Assert.Equal(MarkRole.Symbol, mark.Role);
            if (mark is TextMark text) Assert.Contains(text.HeightMm, heights);
            else Assert.Contains(PenOf(mark)!.WidthMm, widths);
        }
    }

    [Fact]
    public void The_two_styles_draw_devices_differently()
    {
        SymbolKind[] same =
        [
            SymbolKind.Terminal, SymbolKind.Splice, SymbolKind.LeverActuator, SymbolKind.KnobActuator, SymbolKind.CamActuator, SymbolKind.MagnetActuator,
            SymbolKind.Device, SymbolKind.Synchro, // from memory
        ];
        foreach (var kind in Enum.GetValues<SymbolKind>().Except(same))
        {
            Assert.NotEqual(Svg(SymbolStyle.Iec, kind), Svg(SymbolStyle.Ieee, kind));
        }
    }

    [Fact]
    public void No_two_symbols_of_a_style_look_the_same()
    {
        foreach (var style in Enum.GetValues<SymbolStyle>())
        {
            var pictures = Enum.GetValues<SymbolKind>().Select(k => Svg(style, k)).ToList();
            Assert.Equal(pictures.Count, pictures.Distinct().Count());
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(12)]
    public void A_rotary_contact_has_a_port_for_each_throw_and_its_blade_ends_on_the_one_closed_at_rest(int throws)
    {
        foreach (var style in Enum.GetValues<SymbolStyle>())
        {
            for (var closed = 0; closed < throws; closed++)
            {
                var symbol = SymbolLibrary.For(style).RotaryContact(throws, closed);
                Assert.Equal(throws + 1, symbol.Ports.Length);
                Assert.All(symbol.Ports, p => Assert.True(p.At.X % 2.5 == 0 && p.At.Y % 2.5 == 0));
                var blade = symbol.Marks.OfType<LineMark>().Single(l => l.Points[0] == new PointMm(2.5, 0));
                Assert.Equal(symbol.Port($"{closed + 1}").At.Y, blade.Points[1].Y, 6);
            }
        }
    }

    [Fact]
    public void A_symbol_mirrored_twice_or_turned_four_times_is_the_same()
    {
        foreach (var kind in Enum.GetValues<SymbolKind>())
        {
            var symbol = SymbolLibrary.For(SymbolStyle.Ieee).Get(kind);
            var turned = symbol.Turned().Turned().Turned().Turned();
            Assert.Equal(symbol.Ports.AsEnumerable(), symbol.Mirrored().Mirrored().Ports);
            Assert.Equal(symbol.Ports.AsEnumerable(), turned.Ports);
            Assert.Equal(symbol.Bounds.Width, symbol.Turned().Bounds.Height, 6);
        }
    }

    [Fact]
    public void An_arc_keeps_its_ends_when_it_is_mirrored()
    {
        var arc = (ArcMark)SymbolLibrary.For(SymbolStyle.Iec).Get(SymbolKind.Socket).Marks[1];
        var mirrored = (ArcMark)SymbolLibrary.For(SymbolStyle.Iec).Get(SymbolKind.Socket).Mirrored().Marks[1];
        Assert.Equal(-arc.Start.X, mirrored.Start.X, 9);
        Assert.Equal(arc.Start.Y, mirrored.Start.Y, 9);
        Assert.Equal(-arc.Bounds.Left, mirrored.Bounds.Right, 9);
    }

    private static bool Meets(Mark mark, PointMm point) => mark switch
    {
        LineMark line => line.Points.Contains(point)
            || line.Points.Zip(line.Points.Skip(1)).Any(s => Passes(s.First, s.Second, point))
            || (line.IsClosed && line.Bounds.Contains(new BoxMm(point.X, point.Y, point.X, point.Y))),
        CircleMark circle => circle.Centre == point,
        _ => false,
    };

    private static bool Passes(PointMm from, PointMm to, PointMm point) =>
        Math.Abs(((to.X - from.X) * (point.Y - from.Y)) - ((to.Y - from.Y) * (point.X - from.X))) < 1e-9
        && new BoxMm(Math.Min(from.X, to.X), Math.Min(from.Y, to.Y), Math.Max(from.X, to.X), Math.Max(from.Y, to.Y))
            .Contains(new BoxMm(point.X, point.Y, point.X, point.Y));

    private static Pen? PenOf(Mark mark) => mark switch
    {
        LineMark line => line.Pen,
        CircleMark circle => circle.Pen,
        ArcMark arc => arc.Pen,
        _ => null,
    };

    private static string Svg(SymbolStyle style, SymbolKind kind) => SvgWriter.Write(new Sheet(
        SheetKind.Wiring, 1, "", new SheetSize("A4", 210, 297), SymbolLibrary.For(style).Get(kind).Marks));
}
