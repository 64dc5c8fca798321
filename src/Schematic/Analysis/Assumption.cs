using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis;

/// <summary>What an assumption is about.</summary>
public enum AssumptionKind
{
    /// <summary>The voltage from which a coil or another load works.</summary>
    Operates,

    /// <summary>The voltage below which a coil lets go.</summary>
    Releases,

    /// <summary>The voltage or the current from which a lamp counts as lit.</summary>
    Lit,

    /// <summary>The highest voltage that a load stands.</summary>
    Stands,

    /// <summary>The voltages at which an input reads low and high.</summary>
    Level,

    /// <summary>The current that a load takes.</summary>
    Takes,

    /// <summary>The forward drop of a diode.</summary>
    Drop,

    /// <summary>The cross-section of a wire.</summary>
    Gauge,

    /// <summary>Where the contacts of a connector lie on its face.</summary>
    Arrangement,
}

/// <summary>Something that the file does not state and the program took for true; printed with a mark wherever it stands.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Subjects">The things it is assumed of.</param>
/// <param name="What">What is assumed, with the value: <c>operates from 18 V</c>.</param>
/// <param name="Basis">Where the value comes from: <c>75 % of its rated voltage</c>.</param>
/// <param name="Statement">What would state it in the file: <c>operates 18 V</c>; null where the language has no word for it.</param>
public sealed record Assumption(
    AssumptionKind Kind, ImmutableArray<Subject> Subjects, string What, string Basis, string? Statement)
{
    /// <summary>The mark that stands where an assumed value is printed.</summary>
    public const string Mark = ValueText.AssumedMark;

    /// <summary>The names of the things.</summary>
    public string Names => NameList.Sentence(Subjects.Select(s => s.Name));

    /// <summary>One line: <c>K1 operates from 18 V: 75 % of its rated voltage; state 'operates 18 V'</c>.</summary>
    public override string ToString() => $"{Names} {What}: {Basis}{(Statement is null ? "" : $"; state '{Statement}'")}";

    /// <summary>The rules whose findings rest on it.</summary>
    public ImmutableArray<string> Rules => Kind switch
    {
        AssumptionKind.Operates =>
        [
            "coil-below-operate", "coil-weak-when-warm", "load-too-weak", "load-never-energised", "lock-never-released", "expectation-fails",
            "no-supply-setting", "supply-setting", "sneak-path",
        ],
        AssumptionKind.Releases => ["relay-chatter", "expectation-fails"],
        AssumptionKind.Lit => ["load-too-weak", "load-never-energised", "expectation-fails", "sneak-path"],
        AssumptionKind.Stands => ["load-above-rated", "no-supply-setting", "supply-setting"],
        AssumptionKind.Level => ["input-never-changes", "expectation-fails"],
        AssumptionKind.Gauge => ["wire-overloaded", "voltage-drop", "fuse-too-large"],
        _ => [],
    };
}
