namespace Schematic.Layout.Tables;

/// <summary>Figures of chance that are the same on every run and machine (a linear congruential sequence, Numerical Recipes' constants, from memory).</summary>
/// <param name="seed">Where the sequence begins.</param>
internal sealed class Chance(uint seed)
{
    private uint _state = seed;

    /// <summary>Where the sequence stands: another that begins there goes on alike.</summary>
    public uint State => _state;

    /// <summary>A number from zero to below.</summary>
    public int Next(int below) => (int)(Step() % (uint)below);

    /// <summary>A share from zero to one.</summary>
    public double Share() => Step() / (double)(1 << 24);

    private uint Step()
    {
        _state = unchecked((_state * 1664525u) + 1013904223u);
        return _state >> 8;
    }
}
