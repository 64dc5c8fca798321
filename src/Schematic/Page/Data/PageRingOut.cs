using System.Collections.Immutable;
using Schematic.Bench;
using Schematic.Bench.RingOut;
using Schematic.Model;

namespace Schematic.Page.Data;

/// <summary>One step of a ring-out on the page.</summary>
/// <param name="Move">What to do with the actuators before it; empty where they stay.</param>
/// <param name="Stand">Where each actuator is held: its name and position; null on the way between two.</param>
/// <param name="Red">What is under the red lead, in words.</param>
/// <param name="Black">What is under the black lead.</param>
/// <param name="Terminals">All terminals under either lead.</param>
/// <param name="IsDiodeTest">Whether the meter is at its diode test.</param>
/// <param name="Expected">What a sound unit reads.</param>
internal sealed record PageStep(
    string Move, ImmutableArray<(string Actuator, string? Position)> Stand, string Red, string Black, ImmutableArray<string> Terminals,
    bool IsDiodeTest, Reading Expected);

/// <summary>A ring-out on the page, with the readings file that it fills.</summary>
/// <param name="Key">What its readings are kept under: the side that lies on the bench.</param>
/// <param name="Title">What it measures.</param>
/// <param name="Cautions">What is done before a lead touches anything.</param>
/// <param name="Notes">What it finds and what it cannot.</param>
/// <param name="Steps">The steps.</param>
/// <param name="File">
/// The readings file in pieces: between two of them stands what a step's reading was, or a question mark. One more than there are steps.
/// </param>
internal sealed record PageRingOut(
    string Key, string Title, ImmutableArray<string> Cautions, ImmutableArray<string> Notes, ImmutableArray<PageStep> Steps, ImmutableArray<string> File)
{
    /// <summary>The ring-outs of a pack.</summary>
    public static ImmutableArray<PageRingOut> Of(ImmutableArray<RingOutPlan> plans, string fileName) => [.. plans.Select(p => Of(p, fileName))];

    private static PageRingOut Of(RingOutPlan plan, string fileName) => new(
        plan.Circuit.Side.ToString().ToLowerInvariant(), RingOutList.SideWords(plan.Circuit), [.. RingOutList.Cautions(plan.Circuit)],
        RingOutList.Steps(plan).Notes, [.. plan.Steps.Select(s => StepOf(plan.Circuit, s))], PiecesOf(plan, fileName));

    private static PageStep StepOf(BenchCircuit circuit, RingOutStep step)
    {
        var placement = step.Placement;
        return new PageStep(
            step.Doing, [.. circuit.Actuators.Select((a, i) => (a.Name, PositionAt(a, placement.Stand.Places[i])))],
            TerminalText.Of(circuit, placement.Red), TerminalText.Of(circuit, placement.Black),
            [.. placement.Red.Concat(placement.Black).Select(t => circuit.Terminals[t]).Where(t => t != BenchCircuit.Frame).Select(t => t.ToString())],
            placement.Test == MeterTest.Diode, step.Expected);
    }

    private static string? PositionAt(Actuator actuator, int place) => place % 2 == 0 ? actuator.Positions[place / 2].Name : null;

    /// <summary>The file cut where the program leaves its values blank: the first question mark that stands alone in the line of a reading.</summary>
    private static ImmutableArray<string> PiecesOf(RingOutPlan plan, string fileName)
    {
        const string blank = " ?";
        var pieces = ImmutableArray.CreateBuilder<string>();
        var piece = "";
        foreach (var line in RingOutReadings.Write(plan, fileName, null).Split('\n'))
        {
            var at = line.StartsWith("  ", StringComparison.Ordinal) ? line.IndexOf(blank, StringComparison.Ordinal) : -1;
            if (at < 0)
            {
                piece += line + "\n";
                continue;
            }

            pieces.Add(piece + line[..(at + 1)]);
            piece = line[(at + blank.Length)..] + "\n";
        }

        pieces.Add(piece.TrimEnd('\n') + "\n");
        return pieces.ToImmutable();
    }
}
