using System.Globalization;
using Schematic.Bench.Readings;

namespace Schematic.Bench.RingOut;

/// <summary>A ring-out as a readings file with the values left blank.</summary>
public static class RingOutReadings
{
    /// <summary>The text of the file; <paramref name="panelPath"/> is the panel as the readings file is to name it.</summary>
    public static string Write(RingOutPlan plan, string panelPath, string? part)
    {
        var circuit = plan.Circuit;
        var writer = new ReadingsWriter(panelPath, circuit.Side, part, PanelPrint.Of(circuit.Panel), RingOutList.Cautions(circuit));
        Stand? at = null;
        for (var i = 0; i < plan.Steps.Length; i++)
        {
            var (placement, expected, move) = plan.Steps[i];
            var turn = plan.Steps[i].Turn.Length > 0 ? plan.Steps[i].Turn + ": " : "";
            var limits = expected.Limits == expected.Text ? "" : ", " + expected.Limits;
            if (at != placement.Stand) writer.Begin(placement.Stand, circuit.Actuators, move);
            at = placement.Stand;
            writer.Add(
                placement.Test, placement.Red.Select(t => circuit.Terminals[t]), placement.Black.Select(t => circuit.Terminals[t]), value: null,
                $"{(i + 1).ToString(CultureInfo.InvariantCulture)}: {turn}{expected.Text}{limits}");
        }

        return writer.Finish();
    }
}
