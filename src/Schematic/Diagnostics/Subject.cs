namespace Schematic.Diagnostics;

/// <summary>A thing of the panel that a finding is about, so that an editor can show it and a test can ask for it.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Its name as the panel knows it: <c>K1</c>, <c>J1:5</c>, <c>W3</c>.</param>
public sealed record Subject(SubjectKind Kind, string Name)
{
    /// <inheritdoc/>
    public override string ToString() => $"{Kind.ToString().ToLowerInvariant()} {Name}";
}

/// <summary>What a finding is about.</summary>
public enum SubjectKind
{
    /// <summary>A part, by its designator.</summary>
    Part,

    /// <summary>A terminal, such as <c>J1:5</c>.</summary>
    Terminal,

    /// <summary>A wire or the core of a cable.</summary>
    Wire,

    /// <summary>A cable.</summary>
    Cable,

    /// <summary>A net.</summary>
    Net,

    /// <summary>An actuator.</summary>
    Actuator,
}
