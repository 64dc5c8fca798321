using System.Collections.Immutable;
using System.Globalization;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>A cable's loop around neighbouring cores at one side of a thing.</summary>
/// <param name="Cable">The cable.</param>
/// <param name="Side">The side of the thing that the cores leave.</param>
/// <param name="Top">The unit of its uppermost core.</param>
/// <param name="Bottom">The unit of its lowest core.</param>
/// <param name="AtMm">How far from the port it stands.</param>
internal sealed record CableLoop(Cable Cable, Side Side, int Top, int Bottom, double AtMm);

/// <summary>Finds where cores of a cable lie side by side, and puts a loop behind their lettering.</summary>
internal static class CableLoops
{
    /// <summary>The stubs with their loops, and the loops.</summary>
    /// <param name="map">The cables.</param>
    /// <param name="stubs">The stubs on one side of a column, from the top down.</param>
    public static (ImmutableArray<Stub> Stubs, ImmutableArray<CableLoop> Loops) Of(WiringMap map, ImmutableArray<Stub> stubs)
    {
        var loops = ImmutableArray.CreateBuilder<CableLoop>();
        var looped = stubs.ToBuilder();
        for (var i = 0; i < stubs.Length;)
        {
            var run = 1;
            if (CableOf(map, stubs[i]) is { } cable)
            {
                while (i + run < stubs.Length && CableOf(map, stubs[i + run]) == cable
                    && stubs[i + run].Place.Unit - stubs[i + run - 1].Place.Unit <= Metrics.Row) run++;
                if (run > 1)
                {
                    var at = Enumerable.Range(i, run).Max(j => stubs[j].LetteringMm) + 0.5;
                    for (var j = i; j < i + run; j++) looped[j] = stubs[j] with { LoopMm = at, LoopWords = j == i ? WordsOf(cable) : "" };
                    loops.Add(new CableLoop(cable, stubs[i].Place.Port.Side, stubs[i].Place.Unit, stubs[i + run - 1].Place.Unit, at));
                }
            }

            i += run;
        }

        return (looped.ToImmutable(), loops.ToImmutable());
    }

    private static Cable? CableOf(WiringMap map, Stub stub) => stub.IsLettered && stub.Place.Port.End?.Link.Wire?.Cable is { } name
        ? map.Cables.GetValueOrDefault(name)
        : null;

    /// <summary>The cable's name and length; a question mark where none is stated.</summary>
    private static string WordsOf(Cable cable) => cable.Designator + " "
        + (cable.LengthMm is { } mm ? mm >= 1000 ? (mm / 1000).ToString("0.###", CultureInfo.InvariantCulture) + " m" : mm.ToString("0.#", CultureInfo.InvariantCulture) + " mm" : "? m")
        + (cable.HasScreen ? " screened" : "");
}
