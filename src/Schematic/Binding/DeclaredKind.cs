namespace Schematic.Binding;

/// <summary>What a name stands for.</summary>
internal enum DeclaredKind
{
    Part,
    Actuator,
    Cable,
    Wire,

    /// <summary>A statement that could not be read: it may be anything.</summary>
    Unreadable,
}
