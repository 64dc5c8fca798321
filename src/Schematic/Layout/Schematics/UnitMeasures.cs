namespace Schematic.Layout.Schematics;

/// <summary>The widths of what stands side by side in a unit, from left to right.</summary>
internal sealed record UnitMeasures(
    double PlugLeft, double JackLeft, double ChannelLeft, double Devices, double ChannelRight, double JackRight, double PlugRight)
{
    /// <summary>Room for the words at the foot of the frame.</summary>
    public const double NoteWidth = 48;

    public double Total => PlugLeft + JackLeft + ChannelLeft + Devices + ChannelRight + JackRight + PlugRight;

    /// <summary>Where each begins, the whole beginning at <paramref name="left"/>.</summary>
    public UnitColumns At(double left)
    {
        var frameLeft = left + PlugLeft;
        var jackLeft = frameLeft + JackLeft;
        var devicesLeft = jackLeft + ChannelLeft;
        var devicesRight = devicesLeft + Devices;
        var jackRight = devicesRight + ChannelRight;
        return new UnitColumns(frameLeft, jackLeft, devicesLeft, devicesRight, jackRight, jackRight + JackRight);
    }
}

/// <summary>Where the parts of a unit begin and end, in sheet millimetres.</summary>
internal sealed record UnitColumns(
    double FrameLeft, double JackLeft, double DevicesLeft, double DevicesRight, double JackRight, double FrameRight);
