using Schematic.Analysis.Circuits;
using Schematic.Analysis.Quantities;

namespace Schematic.Bench;

/// <summary>A two-terminal device on the bench, as a meter meets it: cold, without power.</summary>
/// <param name="From">The number of its first end: anode, A1, X1.</param>
/// <param name="To">The number of its second end.</param>
/// <param name="Name">The part's designator, or empty for what a fault put there.</param>
/// <param name="Value">What the meter meets between the two.</param>
public readonly record struct BenchElement(int From, int To, string Name, ElementValue Value)
{
    /// <summary>Whether it is gone: blown, broken or never fitted.</summary>
    public bool IsMissing { get; init; }

    /// <summary>The element of a circuit as a meter meets it; null for supplies and the inside of boards, which are taken off.</summary>
    public static ElementValue? ValueOf(Element element) => element.Ohms is { } ohms ? ValueOf(element, ohms) : Unknown(element);

    /// <summary>Nobody knows its resistance: a meter may show any, from a good joint to what it just tells from open.</summary>
    private static ElementValue Unknown(Element element)
    {
        var (least, most) = element.OhmsRange!.Value;
        return Anything(element.Kind, least, most);
    }

    /// <summary>Of a track or a sensor nobody knows the resistance.</summary>
    public static ElementValue AnyOhms { get; } = Anything(ElementKind.Resistor, Element.LeastUnknownOhms, Element.MostUnknownOhms);

    private static ElementValue Anything(ElementKind kind, double least, double most)
    {
        var usual = Math.Sqrt(least * most);
        return new ElementValue(kind, usual, 0, least / usual, most / usual);
    }

    private static ElementValue? ValueOf(Element element, double ohms) => element.Kind switch
    {
        // A cold filament has about a tenth of its hot resistance; what is found on salvaged lamps scatters (from memory).
        ElementKind.Lamp => new ElementValue(element.Kind, ohms * LampInrush.ColdShare, 0, 0.5, 1.8),
        // Winding resistance is sold to 10 %, and copper changes 0.4 % for each degree (from memory).
        ElementKind.Coil => new ElementValue(element.Kind, ohms, 0, 0.87, 1.15),
        // The winding of a motor that stands still has a small part of its running resistance; a bell's contact may be open
        // at rest. Heaters and movements are what they say, to a tenth (from memory).
        ElementKind.Consumer when element.Part is Model.Consumer { Kind: Model.ConsumerKind.Heater or Model.ConsumerKind.Meter } =>
            new ElementValue(element.Kind, ohms, 0, 0.85, 1.15),
        ElementKind.Consumer => new ElementValue(element.Kind, ohms, 0, 0.03, 1.5),
        ElementKind.Resistor => new ElementValue(element.Kind, ohms, 0, 0.93, 1.07),
        // A meter's milliampere gives a diode some 0.1 V less than its rated current does (from memory).
        ElementKind.Diode => new ElementValue(element.Kind, ohms, element.Volts * 0.86, 0.6, 1.2),
        ElementKind.Led => new ElementValue(element.Kind, ohms, element.Volts, 0.85, 1.15),
        // A winding has a small part of what it takes in service; a secondary of few turns reads next to nothing (from memory).
        ElementKind.Supply when element.Part is Model.Transformer { VoltAmps: { } power } transformer => Between(0, 0.3 * transformer.SecondaryVolts * transformer.SecondaryVolts / power),
        ElementKind.Supply when element.Part is Model.Transformer => Between(0, 1000),
        ElementKind.Supply or ElementKind.Pull => null,
        _ => throw new InvalidOperationException("A kind of element without a reading."),
    };

    /// <summary>A resistance somewhere in a range, at its middle unless something else is known.</summary>
    public static ElementValue Between(double least, double most)
    {
        var middle = Math.Max((least + most) / 2, Circuit.LeastOhms);
        return new ElementValue(ElementKind.Resistor, middle, 0, ElementValue.LeastOfTrack * least / middle, ElementValue.MostOfTrack * most / middle);
    }
}

/// <summary>What a meter meets in a device.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Ohms">Resistance cold, of a diode beyond its knee.</param>
/// <param name="Volts">A diode's knee at a meter's current, else zero.</param>
/// <param name="Least">The smallest share of these figures to be expected.</param>
/// <param name="Most">The largest.</param>
public sealed record ElementValue(ElementKind Kind, double Ohms, double Volts, double Least, double Most)
{
    /// <summary>What a track or a resistor by its range may have less than it says, as a share (from memory).</summary>
    public const double LeastOfTrack = 0.93;

    /// <summary>What it may have more.</summary>
    public const double MostOfTrack = 1.07;

    /// <summary><see cref="Slides"/> of a single track that is turned, and of a resistor that can be lit and covered.</summary>
    public const int Alone = 2;

    /// <summary>
    /// Of the two pieces of a potentiometer's track 1 and -1: what the wiper takes from one it gives to the other. <see cref="Alone"/> of
    /// what varies by itself, zero of all else.
    /// </summary>
    public int Slides { get; init; }

    /// <summary>A number that the two pieces of one potentiometer's track share; zero of all else.</summary>
    public int Track { get; init; }

    /// <summary>The share of <see cref="Ohms"/> at the low or the high end of the tolerance.</summary>
    /// <param name="isLow">Whether at the low end; null for the figure itself.</param>
    /// <param name="wiper">Where wipers stand: 1 and -1 at the ends of their ways, 0 in the middle.</param>
    public double ShareAt(bool? isLow, int wiper)
    {
        if (Slides == 0 || (Slides == Alone && wiper == 0)) return isLow is { } low ? low ? Least : Most : 1;
        var place = wiper == 0 ? 1 : wiper == Math.Sign(Slides) ? Most / MostOfTrack : Least / LeastOfTrack;
        return place * (isLow is { } end ? end ? LeastOfTrack : MostOfTrack : 1);
    }

    /// <summary>Whether current passes one way only.</summary>
    public bool IsOneWay => Kind is ElementKind.Diode or ElementKind.Led;
}
