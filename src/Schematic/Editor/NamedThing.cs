using Schematic.Text;

namespace Schematic.Editor;

/// <summary>What a name in a panel file stands for.</summary>
public enum NamedKind
{
    /// <summary>A connector or a device.</summary>
    Part,

    /// <summary>A lever, grip, knob or button.</summary>
    Actuator,

    /// <summary>A position of an actuator.</summary>
    Position,

    /// <summary>A contact or terminal of a part.</summary>
    Contact,

    /// <summary>A cable.</summary>
    Cable,

    /// <summary>A wire.</summary>
    Wire,

    /// <summary>A net.</summary>
    Net,

    /// <summary>The name that a used file is taken in under.</summary>
    UsedFile,
}

/// <summary>Something that has a name in one file, whoever uses that file.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="File">The file that declares it.</param>
/// <param name="Name">Its name in that file.</param>
/// <param name="Owner">The part of a contact, the actuator of a position; empty for all others.</param>
public sealed record NamedThing(NamedKind Kind, string File, string Name, string Owner = "")
{
    /// <inheritdoc/>
    public override string ToString() => Kind == NamedKind.Contact ? $"{Owner}:{Name}" : Name;
}

/// <summary>A place where a thing is named.</summary>
/// <param name="Thing">The thing.</param>
/// <param name="Span">Where its name stands, without prefix and part.</param>
/// <param name="IsDeclaration">Whether the name is given there.</param>
/// <param name="IsCounted">Whether the name is not written there but counted out of a range.</param>
public sealed record Mention(NamedThing Thing, SourceSpan Span, bool IsDeclaration, bool IsCounted);
