using Schematic.Bench.Readings;

namespace Schematic.Bench.Learning;

/// <summary>From readings of an unknown unit to the draft of a panel file.</summary>
public static class Draft
{
    /// <summary>The text of the panel file that the readings make.</summary>
    public static string Of(BenchReadings readings)
    {
        var known = new Knowledge(readings);
        return DraftWriter.Write(readings, known, Learner.Learn(known));
    }
}
