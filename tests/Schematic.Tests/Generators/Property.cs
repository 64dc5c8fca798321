using System.Globalization;
using CsCheck;
using Xunit;

namespace Schematic.Tests.Generators;

/// <summary>
/// A property tried on generated cases: the same cases on every machine and in every run, so that a red test is red for everyone.
/// <c>PROPERTIES=10</c> in the environment draws new ones, ten times as many; what they find is mended and its smallest case becomes a
/// test of its own.
/// </summary>
internal static class Property
{
    private const int UsualCases = 100;

    /// <summary>Tries <paramref name="assert"/> on so many cases.</summary>
    public static void Holds<T>(this Gen<T> cases, Action<T> assert, int count = UsualCases, Func<T, string>? print = null)
    {
        if (int.TryParse(Environment.GetEnvironmentVariable("PROPERTIES"), CultureInfo.InvariantCulture, out var times))
        {
            cases.Sample(assert, iter: count * times, print: print);
            return;
        }

        for (var i = 0; i < count; i++) Try(cases, assert, new PCG(1, (ulong)i), print);
    }

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int, Func{T, string})"/>
    public static void Holds<T>(this Gen<T> cases, Func<T, bool> holds, int count = UsualCases) =>
        cases.Holds(c => Assert.True(holds(c)), count);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int, Func{T, string})"/>
    public static void Holds<T1, T2>(this Gen<(T1, T2)> cases, Action<T1, T2> assert, int count = UsualCases, Func<(T1, T2), string>? print = null) =>
        cases.Holds(c => assert(c.Item1, c.Item2), count, print);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int, Func{T, string})"/>
    public static void Holds<T1, T2>(this Gen<(T1, T2)> cases, Func<T1, T2, bool> holds, int count = UsualCases) =>
        cases.Holds(c => Assert.True(holds(c.Item1, c.Item2)), count);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int, Func{T, string})"/>
    public static void Holds<T1, T2, T3>(this Gen<(T1, T2, T3)> cases, Action<T1, T2, T3> assert, int count = UsualCases) =>
        cases.Holds(c => assert(c.Item1, c.Item2, c.Item3), count);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int, Func{T, string})"/>
    public static void Holds<T1, T2, T3>(this Gen<(T1, T2, T3)> cases, Func<T1, T2, T3, bool> holds, int count = UsualCases) =>
        cases.Holds(c => Assert.True(holds(c.Item1, c.Item2, c.Item3)), count);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int, Func{T, string})"/>
    public static void Holds<T1, T2, T3, T4>(this Gen<(T1, T2, T3, T4)> cases, Action<T1, T2, T3, T4> assert, int count = UsualCases) =>
        cases.Holds(c => assert(c.Item1, c.Item2, c.Item3, c.Item4), count);

    /// <inheritdoc cref="Holds{T}(Gen{T}, Action{T}, int, Func{T, string})"/>
    public static void Holds<T1, T2, T3, T4, T5>(this Gen<(T1, T2, T3, T4, T5)> cases, Action<T1, T2, T3, T4, T5> assert, int count = UsualCases) =>
        cases.Holds(c => assert(c.Item1, c.Item2, c.Item3, c.Item4, c.Item5), count);

    /// <summary>Tries the one case that the library once named by its seed.</summary>
    public static void HoldsFor<T>(this Gen<T> cases, string seed, Action<T> assert, Func<T, string>? print = null) =>
        cases.Sample(assert, seed: seed, iter: 1, threads: 1, print: print);

    private static void Try<T>(Gen<T> cases, Action<T> assert, PCG random, Func<T, string>? print)
    {
        var seed = random.ToString();
        try
        {
            assert(cases.Generate(random, null, out _));
        }
        catch (Exception)
        {
            // The library repeats the case, to print it and the seed that brings it back.
            cases.HoldsFor(seed, assert, print);
            throw;
        }
    }
}
