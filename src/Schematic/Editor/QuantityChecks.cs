using System.Collections.Immutable;
using Schematic.Language;

namespace Schematic.Editor;

/// <summary>Which rules look at a quantity, by the statement it stands in, the word before it and what it measures.</summary>
internal static class QuantityChecks
{
    private static readonly ImmutableArray<(string Statements, string Clause, Dimension Dimension, string Rules)> Table =
    [
        ("wire cable", "", Dimension.Gauge, "wire-overloaded wire-size voltage-drop fuse-too-large"),
        ("wire cable", "", Dimension.Area, "wire-overloaded wire-size voltage-drop fuse-too-large"),
        ("wire cable", "", Dimension.Length, "voltage-drop"),
        ("lamp", "", Dimension.Voltage, "lamp-dim load-too-weak load-above-rated"),
        ("lamp", "", Dimension.Current, "lamp-inrush switch-overloaded fuse-overloaded supply-over-limit"),
        ("led", "", Dimension.Voltage, "load-too-weak"),
        ("led", "", Dimension.Current, "load-over-rating load-too-weak"),
        ("solenoid relay", "", Dimension.Voltage, "coil-below-operate coil-weak-when-warm load-above-rated"),
        ("solenoid relay", "", Dimension.Current, "switch-overloaded switch-derating fuse-overloaded supply-over-limit"),
        ("solenoid relay", "operates", Dimension.Voltage, "coil-below-operate coil-weak-when-warm load-too-weak"),
        ("relay", "releases", Dimension.Voltage, "relay-chatter"),
        ("solenoid relay", "max", Dimension.Voltage, "load-over-rating"),
        ("motor bell buzzer heater meter", "", Dimension.Voltage, "load-too-weak load-above-rated"),
        ("motor bell buzzer heater meter", "", Dimension.Current, "switch-overloaded fuse-overloaded supply-over-limit"),
        ("motor bell buzzer heater meter", "operates", Dimension.Voltage, "load-too-weak"),
        ("motor bell buzzer heater meter", "max", Dimension.Voltage, "load-over-rating"),
        ("resistor", "", Dimension.Power, "load-over-rating"),
        ("diode", "", Dimension.Current, "diode-underrated"),
        ("diode", "", Dimension.Voltage, "diode-underrated"),
        ("suppressor", "", Dimension.Voltage, "suppressor-too-low"),
        ("fuse breaker", "", Dimension.Current, "fuse-overloaded fuse-too-large"),
        ("supply", "", Dimension.Voltage, "supply-setting above-extra-low-voltage over-limit-input"),
        ("supply", "adjustable", Dimension.Voltage, "supply-setting no-supply-setting above-extra-low-voltage"),
        ("supply", "limit", Dimension.Current, "supply-over-limit lamp-inrush"),
        ("board", "max", Dimension.Voltage, "over-limit-input"),
        ("board", "pull-up", Dimension.Voltage, "floating-input over-limit-input"),
        ("board", "pull-up", Dimension.Resistance, "floating-input"),
        ("board", "pull-down", Dimension.Resistance, "floating-input"),
        ("switch pole poles relay", "rated", Dimension.Current, "switch-overloaded switch-derating lamp-inrush"),
        ("limits", "drop", Dimension.Voltage, "voltage-drop"),
        ("limits", "drop", Dimension.Percent, "voltage-drop"),
        ("limits", "ambient", Dimension.Temperature, "wire-overloaded"),
        ("limits", "insulation", Dimension.Temperature, "wire-overloaded"),
    ];

    /// <summary>The rules; none where nothing looks at it.</summary>
    public static ImmutableArray<string> RulesFor(string statement, string clause, Dimension dimension) =>
    [
        .. Table.Where(t => t.Dimension == dimension && t.Clause == clause && t.Statements.Split(' ').Contains(statement))
            .SelectMany(t => t.Rules.Split(' ')),
    ];

    /// <summary>Every rule that is named here.</summary>
    public static IEnumerable<string> AllRules => Table.SelectMany(t => t.Rules.Split(' ')).Distinct();
}
