using System.Collections.Immutable;

namespace Schematic.Bench.Diagnosis;

/// <summary>What an explanation has in one stand as it is noted: the circuit as it really stood, and the contacts that leads were really on.</summary>
internal readonly struct ProbedStand(ProbedCircuit probed, Mistake? mistake, IEnumerable<int> ends)
{
    /// <summary>The terminals of what is wrong.</summary>
    public IEnumerable<int> EndsOfFaults => ends;

    /// <summary>A number that contacts share which are one place for the person who notes them.</summary>
    public int PlaceOf(int noted) => probed.PlaceOf(Real(noted));

    /// <summary>A number that contacts share which hang together.</summary>
    public int GroupOf(int noted) => probed.GroupOf(Real(noted));

    /// <summary>What in a group is turned by a hand, or lit, where it is one thing; else null.</summary>
    public string? TurnedIn(int group) => probed.TurnedIn(group);

    /// <summary>What a meter at ohms shows between two contacts.</summary>
    public Reading ReadOhms(int red, int black)
    {
        var reading = probed.ReadOhms(Real(red), Real(black));
        return mistake is null ? reading : mistake.Noted(reading);
    }

    /// <summary>What a meter shows.</summary>
    public Reading Read(MeterTest test, ImmutableArray<int> red, ImmutableArray<int> black) => mistake is null
        ? probed.Read(test, red, black)
        : mistake.Noted(probed.Read(test, mistake.RealContacts(red), mistake.RealContacts(black)));

    private int Real(int noted) => mistake is null || mistake.Contacts.IsEmpty ? noted : mistake.Contacts[noted];
}
