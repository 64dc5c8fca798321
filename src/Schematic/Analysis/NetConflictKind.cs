namespace Schematic.Analysis;

/// <summary>What makes two stated nets one conductor.</summary>
public enum NetConflictKind
{
    /// <summary>A contact is listed in both.</summary>
    SharedContact,

    /// <summary>Mated contacts, jumpers, a board or the inside of a unit join them.</summary>
    MadeJoint,

    /// <summary>A wire, or a chain of wires, joins them.</summary>
    Wire,
}
