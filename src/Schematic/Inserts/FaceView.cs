namespace Schematic.Inserts;

/// <summary>From where a connector face is looked at. The front is the mating face, the rear the wire side.</summary>
public enum FaceView
{
    /// <summary>Mating face of the half that carries pins: the canonical view.</summary>
    FrontOfPins,

    /// <summary>Wire side of the half that carries pins.</summary>
    RearOfPins,

    /// <summary>Mating face of the half that carries sockets.</summary>
    FrontOfSockets,

    /// <summary>Wire side of the half that carries sockets.</summary>
    RearOfSockets,
}
