using System.Globalization;
using System.Text;

namespace Schematic.Tests.Generators;

/// <summary>
/// Makes panel files of salvaged units, the same for the same seed: one round or square connector, one to three actuators,
/// gangs, make and break contacts, lamps with a shared return, coils, resistors, diodes, contacts with nothing on them.
/// </summary>
internal sealed class UnitGenerator
{
    private readonly Random _random;
    private readonly StringBuilder _text = new();
    private readonly Queue<int> _free;
    private readonly List<(string Name, string[] Positions)> _actuators = [];
    private int _switches;
    private int _lamps;
    private int _coils;
    private int _resistors;
    private int _diodes;

    private UnitGenerator(int seed, int contacts)
    {
        _random = new Random(seed);
        var order = Enumerable.Range(1, contacts).ToArray();
        if (seed % 3 == 0) _random.Shuffle(order);
        _free = new Queue<int>(order);
    }

    /// <summary>The text of a unit with that many contacts.</summary>
    public static string Generate(int seed, int contacts)
    {
        var unit = new UnitGenerator(seed, contacts);
        unit.Write(contacts, seed % 2 == 0);
        return unit._text.ToString();
    }

    private void Write(int contacts, bool isRound)
    {
        Line(isRound
            ? $"connector J1 {{ pins ; spiral {contacts} from centre clockwise on front of pins ; size 20 ; solder }}"
            : $"connector J1 {{ pins ; grid {(contacts + 3) / 4} by 4 pitch 2.54 mm on front of pins ; size 20 ; solder }}");
        var actuators = _random.Next(1, 4);
        for (var i = 0; i < actuators; i++) AddActuator(i);
        var unused = _random.Next(0, 1 + (contacts / 5));
        while (_free.Count > unused + 1) AddPiece();
    }

    private void AddActuator(int index)
    {
        var name = ((string[])["LEVER", "GRIP", "KNOB"])[index];
        switch (_random.Next(3))
        {
            case 0:
                Line($"actuator {name} {{ normal rest ; reverse }}");
                _actuators.Add((name, ["normal", "reverse"]));
                break;
            case 1:
                Line($"actuator {name} {{ left-stop springs-to left ; left ; centre rest ; right ; right-stop springs-to right }}");
                _actuators.Add((name, ["left-stop", "left", "centre", "right", "right-stop"]));
                break;
            default:
                Line($"actuator {name} {{ off rest ; one ; two }}");
                _actuators.Add((name, ["off", "one", "two"]));
                break;
        }
    }

    private void AddPiece()
    {
        var (actuator, positions) = _actuators[_random.Next(_actuators.Count)];
        var other = positions[_random.Next(1, positions.Length)];
        switch (_random.Next(9))
        {
            case 0 or 1 when _free.Count >= 12:
                AddGang(actuator, positions[0], other, _random.Next(2, 4));
                break;
            case 0 or 1 or 2 when _free.Count >= 4:
                AddGang(actuator, positions[0], other, 1);
                break;
            case 3 or 4:
                Line($"switch S{++_switches} {(_random.Next(3) == 0 ? "break" : "make")} on {actuator} when {other} {{ {Next()} {Next()} }}");
                break;
            case 5 when _free.Count >= 6:
                var common = Next();
                for (var i = _random.Next(2, 4); i > 0; i--) Line($"lamp DS{++_lamps} 28 V {40 * i} mA {{ {Next()} {common} }}");
                break;
            case 6:
                Line($"solenoid L{++_coils} 28 V {Number(20 + _random.Next(400))} ohm suppressed {{ {Next()} {Next()} }}");
                break;
            case 7:
                Line($"resistor R{++_resistors} {Number(50 + _random.Next(5000))} ohm {{ {Next()} {Next()} }}");
                break;
            case 8:
                Line($"diode D{++_diodes} 1 A 400 V {{ {Next()} {Next()} }}");
                break;
            default:
                Line($"lamp DS{++_lamps} 28 V 40 mA {{ {Next()} {Next()} }}");
                break;
        }
    }

    private void AddGang(string actuator, string one, string other, int poles)
    {
        var first = _switches + 1;
        _switches += poles;
        string List() => string.Join(' ', Enumerable.Range(0, poles).Select(_ => Next()));
        var name = poles == 1 ? $"pole S{first}" : $"poles S{first}..S{_switches}";
        Line($"{name} changeover on {actuator} {{ common {List()} ; {one} {List()} ; {other} {List()} }}");
    }

    private string Next() => $"J1:{_free.Dequeue().ToString(CultureInfo.InvariantCulture)}";

    private void Line(string text) => _text.Append(text).Append('\n');

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
