using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Layout.Circuits;

/// <summary>Throws of one pole that are drawn as one symbol, each throw opening to its own column.</summary>
/// <param name="Pole">The pole.</param>
/// <param name="Throws">The throws from left to right.</param>
/// <param name="IsDown">Whether the common is above and the throws open downwards.</param>
/// <param name="IsWhole">Whether the symbol shows every throw of the pole, those that lead nowhere included.</param>
internal sealed record Fan(PoleUse Pole, ImmutableArray<PlacedLink> Throws, bool IsDown, bool IsWhole)
{
    /// <summary>The node of the common.</summary>
    public int Node => IsDown ? Throws[0].Upper : Throws[0].Lower;

    /// <summary>
    /// The fans among the links: throws that meet their common on the same side in columns that nothing separates. A pole whose
    /// throws cannot all stand so is drawn throw by throw where only one is left.
    /// </summary>
    public static ImmutableArray<Fan> Of(ImmutableArray<PlacedLink> links)
    {
        var fans = ImmutableArray.CreateBuilder<Fan>();
        foreach (var pole in links.Where(l => l.Link.Pole is { Pole.Throws.Length: > 1 }).GroupBy(l => l.Link.Pole!.Index))
        {
            var groups = pole.GroupBy(l => l.Upper == l.Link.FromNode).SelectMany(side => Runs(links, [.. side.OrderBy(l => l.Column)], side.Key)).ToList();
            fans.AddRange(groups.Where(g => groups.Count == 1 || g.Throws.Length > 1).Select(g => g with { IsWhole = groups.Count == 1 }));
        }

        return fans.ToImmutable();
    }

    private static IEnumerable<Fan> Runs(ImmutableArray<PlacedLink> links, ImmutableArray<PlacedLink> throws, bool isDown)
    {
        var start = 0;
        for (var i = 1; i <= throws.Length; i++)
        {
            if (i < throws.Length && IsNext(links, throws[i - 1], throws[i], isDown) && (i == start + 1 || Goes(throws[start], throws[start + 1]) == Goes(throws[i - 1], throws[i]))) continue;
            yield return new Fan(throws[0].Link.Pole!, throws[start..i], isDown, false);
            start = i;
        }
    }

    private static bool Goes(PlacedLink a, PlacedLink b) => a.Link.Throw < b.Link.Throw;

    private static bool IsNext(ImmutableArray<PlacedLink> links, PlacedLink a, PlacedLink b, bool isDown)
    {
        var node = isDown ? a.Upper : a.Lower;
        return node == (isDown ? b.Upper : b.Lower) && a.Column != b.Column
            && !links.Any(l => l.Column > a.Column && l.Column < b.Column && (isDown ? l.Upper : l.Lower) == node);
    }
}

/// <summary>A measured fan: the symbol around its common, and how each throw leaves it.</summary>
/// <param name="Art">The symbol; its origin is the common's port, and it grows away from the common.</param>
/// <param name="Anchor">The throw whose column the symbol is set over, or -1 when the common stands in the first column.</param>
/// <param name="PortX">Where each throw leaves the symbol, against the common, in the order of the fan.</param>
/// <param name="Tracks">The track by which each throw goes to its column; -1 for straight on.</param>
/// <param name="PortY">How far from the common the throws leave the symbol.</param>
/// <param name="LinkageY">Where the operator's linkage meets the symbol, against the common.</param>
internal sealed record FanShape(Art Art, int Anchor, ImmutableArray<double> PortX, ImmutableArray<int> Tracks, double PortY, double LinkageY)
{
    /// <summary>Where the linkage meets the blade, against the common.</summary>
    public required double BladeX { get; init; }
}

/// <summary>Measures and draws fans.</summary>
internal sealed class FanArt(CircuitMap map, CircuitMeasures measures, ContactWords words, BodyArt bodies)
{
    /// <summary>From the outermost throw of a symbol to the operator beside it.</summary>
    private const double OperatorGap = 0.5;

    /// <summary>From the operator's words to a throw that passes below them.</summary>
    private const double WordsGap = 0.5;

    private readonly SymbolLibrary _symbols = SymbolLibrary.For(map.Panel.Symbols);

    /// <summary>Measures a fan.</summary>
    /// <param name="fan">The fan.</param>
    /// <param name="isStraight">Whether the way to its common comes down the first column.</param>
    /// <param name="drive">How its operator is drawn.</param>
    /// <param name="room">For which drive it keeps room, where that is more: one that a linkage reaches stays where it was without.</param>
    public FanShape Of(Fan fan, bool isStraight, Drive drive, Drive? room = null)
    {
        var (symbol, portOf, restX) = SymbolOf(fan);
        var length = Math.Abs(symbol.Ports[^1].At.Y);
        var portX = fan.Throws.Select(t => symbol.Port(portOf(t.Link.Throw)).At.X).ToImmutableArray();
        var anchor = isStraight ? -1 : (fan.Throws.Length - 1) / 2;
        var tracks = Enumerable.Range(0, fan.Throws.Length).Select(i => TrackOf(i, fan.Throws.Length, anchor)).ToImmutableArray();
        var isNamed = IsCommonNamed(fan);
        var clearX = symbol.Bounds.Left - OperatorGap;
        var wordsEnd = bodies.WriteDrive(new ArtDrawing(measures), fan.Pole, room ?? drive, restX, fan.IsDown ? 5 : -5, clearX);
        // The words of the operator run downwards: under a common that is below they need a piece of line to stand beside, and so does
        // the common's own name where the operator's symbol reaches up to it.
        var nameRoom = isNamed ? measures.Name + 0.5 : 0;
        var lift = fan.IsDown ? isNamed && fan.Pole.Actuator is not null ? nameRoom : 0 : wordsEnd > -nameRoom ? wordsEnd + nameRoom : 0;
        // Throws that go over to the left pass below the words.
        var drop = fan.IsDown && anchor > 0 ? Math.Max(0, wordsEnd + WordsGap - (length + 1.25)) : 0;
        var opening = length + lift + drop + (tracks.Max() < 0 ? 0 : 1.25 + (tracks.Max() * measures.TrackPitch));
        var height = fan.IsDown ? Math.Max(opening, lift + wordsEnd) : opening;
        var commonName = fan.Pole.Part.At(fan.Pole.Pole.Common).ToString();
        var pole = symbol.PoleOf(commonName, fan.Throws.Select(t => (fan.Pole.Part.At(fan.Pole.Pole.Throws[t.Link.Throw].Terminal).ToString(), portOf(t.Link.Throw))));
        var art = Draw(fan, symbol, pole, length, lift, height, restX, drive);
        if (drop > 0) art = Dropped(art, fan, portX, length + lift, drop);
        return new FanShape(art, anchor, portX, tracks, length + lift + drop, fan.IsDown ? 5 + lift : -5 - lift) { BladeX = restX };
    }

    /// <summary>Whether somebody must find the common's terminal: its name stands at it.</summary>
    private bool IsCommonNamed(Fan fan) => fan.Pole.Part is Relay || map.IsWired(fan.Pole.Part.At(fan.Pole.Pole.Common));

    private Art Dropped(Art art, Fan fan, ImmutableArray<double> portX, double from, double drop)
    {
        var wires = new ArtDrawing(measures);
        for (var i = 0; i < portX.Length; i++) wires.Wire(fan.Throws[i].Link.To.ToString(), new(portX[i], from), new PointMm(portX[i], from + drop));
        return new Art([.. art.Marks, .. wires.Done(0).Marks], art.Height) { Things = art.Things };
    }

    private static int TrackOf(int index, int count, int anchor)
    {
        if (anchor < 0) return count <= 2 ? 0 : count - 1 - index;
        return index == anchor ? -1 : index < anchor ? index : count - 1 - index;
    }

    private (Symbol Symbol, Func<int, string> PortOf, double RestX) SymbolOf(Fan fan)
    {
        var isAscending = fan.Throws.Length < 2 || fan.Throws[0].Link.Throw < fan.Throws[1].Link.Throw;
        ImmutableArray<int> shown = fan.IsWhole ? [.. Enumerable.Range(0, fan.Pole.Pole.Throws.Length)] : [.. fan.Throws.Select(t => t.Link.Throw).Order()];
        if (!isAscending) shown = [.. shown.Reverse()];
        var closed = shown.Where(i => words.IsClosedAtRest(fan.Pole.Pole.Throws[i])).ToList();
        if (shown.Length == 2 && closed.Count == 1)
        {
            var restIsLeft = shown[0] == closed[0];
            var changeover = Turned(_symbols.ContactOf(_symbols.Get(SymbolKind.ChangeoverContact), fan.Pole.Part, fan.Pole.Pole), fan.IsDown, firstIsLeft: restIsLeft);
            return (changeover, i => i == closed[0] ? "B" : "M", restIsLeft ? -0.7 : 0.7);
        }

        int? rest = closed.Count > 0 ? shown.IndexOf(closed[0]) : null;
        var rotary = Turned(_symbols.ContactOf(_symbols.RotaryContact(shown.Length, rest), fan.Pole.Part, fan.Pole.Pole), fan.IsDown, firstIsLeft: true);
        var restX = rest is { } r ? (r - ((shown.Length - 1) / 2.0)) * 5 * 2.5 / 7.5 : 0;
        return (rotary, i => (shown.IndexOf(i) + 1).ToString(System.Globalization.CultureInfo.InvariantCulture), restX);
    }

    /// <summary>A lying symbol set upright, its upper port on the left or on the right.</summary>
    private static Symbol Turned(Symbol lying, bool isDown, bool firstIsLeft)
    {
        var once = lying.Turned();
        if (isDown) return firstIsLeft ? once.Mirrored() : once;
        var thrice = once.Turned().Turned();
        return firstIsLeft ? thrice : thrice.Mirrored();
    }

    private Art Draw(Fan fan, Symbol symbol, DrawnPole pole, double length, double lift, double height, double restX, Drive drive)
    {
        var drawing = new ArtDrawing(measures);
        var part = fan.Pole.Part;
        var common = part.At(fan.Pole.Pole.Common);
        var origin = fan.IsDown ? lift : -lift;
        drawing.Wire(common.ToString(), new(0, 0), new(0, origin));
        var marks = symbol.PlacedAt(new PointMm(0, origin), part.Designator, pole).ToList();
        foreach (var mark in marks) drawing.Add(mark);
        var box = marks.Select(m => m.Bounds).Aggregate((a, b) => a.Union(b));
        if (IsCommonNamed(fan)) drawing.Name(common, common.Name, -0.8, fan.IsDown ? 1.9 : 0.4, TextAlign.End);
        // Beside the pivot where nothing else follows; the coil's place needs the room beyond the throws.
        var y = part is Relay ? (fan.IsDown ? 4.0 + lift : 5 - length - lift) : fan.IsDown ? 2.4 + lift : 0.4 - lift;
        var x = (part is Relay ? box.Right : BodyArt.RightOf(part, box)) + measures.TextGap;
        drawing.Name(part.Designator, part.Designator, x, y, bold: true);
        if (part is Relay relay) bodies.WriteCoil(drawing, relay, x, y + measures.SmallStep);
        bodies.WriteDrive(drawing, fan.Pole, drive, restX, fan.IsDown ? 5 + lift : -5 - lift, symbol.Bounds.Left - OperatorGap);
        var things = ImmutableArray.Create(new PlacedThing(BodyArt.ThingOf(fan.Pole), box));
        if (drive == Drive.Home && fan.Pole.Actuator is { } name) things = things.Add(new PlacedThing(BodyArt.ActuatorOf(name), box));
        return drawing.Done(height) with { Things = things };
    }
}
