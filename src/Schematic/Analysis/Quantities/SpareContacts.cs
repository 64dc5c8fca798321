namespace Schematic.Analysis.Quantities;

/// <summary>How many contacts a connector should keep free (<see cref="Sources.Spares"/>).</summary>
public static class SpareContacts
{
    /// <summary>Two up to 25 contacts, four up to 100, six above.</summary>
    public static int GoodPractice(int contacts) => contacts <= 25 ? 2 : contacts <= 100 ? 4 : 6;
}
