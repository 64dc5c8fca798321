using Schematic.Model;

namespace Schematic.Bench;

/// <summary>What a hand does with what varies while the leads stay on.</summary>
internal static class TurnWords
{
    /// <summary>In words: <c>turn RP1 slowly from end to end</c>; of a photoresistor, cover and light it.</summary>
    public static string Of(BenchCircuit circuit, string? designator) => designator is null ? "turn it slowly from end to end"
        : circuit.Panel.FindPart(designator) is RangedResistor { Kind: RangedResistorKind.Photoresistor }
            ? $"cover {designator} with the hand, then shine a torch on it"
            : $"turn {designator} slowly from end to end";
}

/// <summary>How a line of a readings file names the setting of the meter, and how people do.</summary>
internal static class MeterTestText
{
    /// <summary>In a table: <c>ohms</c>, <c>diode test</c>.</summary>
    public static string Words(MeterTest test) => test switch
    {
        MeterTest.Ohms => "ohms",
        MeterTest.Diode => "diode test",
        MeterTest.Turned => "ohms, turned",
        _ => throw new InvalidOperationException("A setting of the meter without words."),
    };

    /// <summary>Behind a value in a readings file; empty for ohms.</summary>
    public static string Suffix(MeterTest test) => test switch
    {
        MeterTest.Ohms => "",
        MeterTest.Diode => " diode",
        MeterTest.Turned => " turned",
        _ => throw new InvalidOperationException("A setting of the meter without words."),
    };

    /// <summary>Between what is under the leads.</summary>
    public static string Joined(MeterTest test, bool isPair) => test == MeterTest.Diode ? " -> " : isPair ? " " : " to ";
}
