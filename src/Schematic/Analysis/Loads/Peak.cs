namespace Schematic.Analysis.Loads;

/// <summary>The highest value seen so far and the case that showed it; a lowest value is kept with its sign turned.</summary>
internal struct Peak
{
    /// <summary>The value; zero before any was seen.</summary>
    public double Value { get; private set; }

    /// <summary>The highest value that a solved case shows: less than <see cref="Value"/> where that is a bound.</summary>
    public double Shown { get; private set; }

    /// <summary>The case, or null before any was seen.</summary>
    public SwitchingCase? Case { get; private set; }

    /// <summary>Takes a value when it is the first, or beats the others by more than a rounding error.</summary>
    public void Raise(double value, SwitchingCase state)
    {
        if (Case is not null && value <= Value + (1e-9 * Math.Abs(Value)) + 1e-12) return;
        (Value, Shown, Case) = (value, value, state);
    }

    /// <summary>Puts a bound that was found otherwise, and what its case shows when it is solved.</summary>
    public void Put(double value, double shown, SwitchingCase state) => (Value, Shown, Case) = (value, Math.Max(Shown, shown), state);

    /// <summary>Adds to the value, up to a highest: what other regions may add to a shared feed.</summary>
    public void Lift(double more, double highest = double.PositiveInfinity) => Value = Math.Min(Value + more, highest);

    /// <summary>Raises the value to a bound; the case stays the one that shows most.</summary>
    public void RaiseToBound(double value) => Value = Case is null ? Value : Math.Max(Value, value);
}
