namespace Schematic.Analysis;

/// <summary>What holds two terminals at one potential.</summary>
public enum JointKind
{
    /// <summary>The wiring inside a made unit: a device's terminal and a contact.</summary>
    Attachment,

    /// <summary>Two contacts of mated connectors that meet.</summary>
    Mate,

    /// <summary>A jumper bar of a terminal strip.</summary>
    Jumper,

    /// <summary>Two ground terminals that a board joins.</summary>
    BoardGround,

    /// <summary>A stated net.</summary>
    Net,

    /// <summary>A wire or a cable core.</summary>
    Wire,
}
