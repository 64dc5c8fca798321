namespace Schematic.Analysis.Loads;

/// <summary>The highest value seen so far and the case that showed it; a lowest value is kept with its sign turned.</summary>
internal struct Peak
{
    /// <summary>The value; zero before any was seen.</summary>
    public double Value { get; private set; }

    /// <summary>The case, or null before any was seen.</summary>
    public SwitchingCase? Case { get; private set; }

    /// <summary>Takes a value when it is the first, or beats the others by more than a rounding error.</summary>
    public void Raise(double value, SwitchingCase state)
    {
        if (Case is not null && value <= Value + (1e-9 * Math.Abs(Value)) + 1e-12) return;
        (Value, Case) = (value, state);
    }

    /// <summary>Puts a value that was found otherwise, with the case that shows it.</summary>
    public void Put(double value, SwitchingCase state) => (Value, Case) = (value, state);

    /// <summary>Adds to the value: what other regions may add to a shared feed.</summary>
    public void Lift(double more) => Value += more;
}
