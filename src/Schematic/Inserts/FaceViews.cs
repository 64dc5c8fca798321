namespace Schematic.Inserts;

/// <summary>Facts about the four faces of a mated pair.</summary>
public static class FaceViews
{
    /// <summary>
    /// Whether left and right are exchanged against the canonical view. Front of pins and rear of sockets look alike; the
    /// other two are their mirrors, because one looks at the same axis from the other end.
    /// </summary>
    public static bool IsMirrored(this FaceView view) => view is FaceView.RearOfPins or FaceView.FrontOfSockets;

    /// <summary>Whether the wires are seen, not the mating face.</summary>
    public static bool IsWireSide(this FaceView view) => view is FaceView.RearOfPins or FaceView.RearOfSockets;

    /// <summary>Whether the half carries pins.</summary>
    public static bool IsPins(this FaceView view) => view is FaceView.FrontOfPins or FaceView.RearOfPins;

    /// <summary>The same half seen from its other side.</summary>
    public static FaceView OtherSide(this FaceView view) => view switch
    {
        FaceView.FrontOfPins => FaceView.RearOfPins,
        FaceView.RearOfPins => FaceView.FrontOfPins,
        FaceView.FrontOfSockets => FaceView.RearOfSockets,
        _ => FaceView.FrontOfSockets,
    };

    /// <summary>The face in words, such as "front of the pins".</summary>
    public static string Words(this FaceView view) =>
        $"{(view.IsWireSide() ? "rear" : "front")} of the {(view.IsPins() ? "pins" : "sockets")}";

    /// <summary>What is seen and from where, such as "seen from the wire side of the sockets".</summary>
    public static string SeenFrom(this FaceView view) =>
        $"seen from the {(view.IsWireSide() ? "wire" : "mating")} side of the {(view.IsPins() ? "pins" : "sockets")}";
}
