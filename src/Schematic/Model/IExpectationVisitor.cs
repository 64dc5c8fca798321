namespace Schematic.Model;

/// <summary>An answer for every kind of claim; a new kind does not compile until each stage has one.</summary>
/// <typeparam name="T">The answer.</typeparam>
public interface IExpectationVisitor<out T>
{
    /// <summary>The answer for the level of an input.</summary>
    T Visit(LevelExpectation level);

    /// <summary>The answer for two terminals that are joined or not.</summary>
    T Visit(ContinuityExpectation continuity);

    /// <summary>The answer for a load that is energised or not.</summary>
    T Visit(EnergisedExpectation energised);

    /// <summary>The answer for what must never be reached.</summary>
    T Visit(NeverExpectation never);
}
