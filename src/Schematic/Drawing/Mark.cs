namespace Schematic.Drawing;

/// <summary>One thing drawn on a sheet. Coordinates are millimetres on the sheet.</summary>
public abstract record Mark(MarkRole Role)
{
    /// <summary>
    /// What the mark belongs to: a designator (<c>S1</c>), a terminal (<c>J1:5</c>), a wire or a net; null for the sheet's own.
    /// Marks of one symbol share the owner.
    /// </summary>
    public string? Owner { get; init; }

    /// <summary>The thing of the panel that the mark shows, so that a page can light it up and a test can read it back; null for none.</summary>
    public Thing? Subject { get; init; }

    /// <summary>The contact set that the mark is part of; null for marks of anything else.</summary>
    public DrawnPole? Pole { get; init; }

    /// <summary>The smallest upright box around the mark's centre lines (text: around its letters).</summary>
    public abstract BoxMm Bounds { get; }

    /// <summary>The same mark moved by <paramref name="dx"/> and <paramref name="dy"/>.</summary>
    public abstract Mark Moved(double dx, double dy);
}
