using System.Collections.Immutable;
using System.Globalization;
using Schematic.Model;

namespace Schematic.Bench.Diagnosis;

/// <summary>
/// The mistakes that people make at the bench, each as a map of contacts or positions. The chances are judgement, no source: one
/// mistake of a person is likelier than a broken part, so that it outranks the many faults that would explain the same.
/// </summary>
internal static class MistakeCatalogue
{
    /// <summary>A shorter run that is shifted looks like an exchange.</summary>
    private const int ShortestRun = 3;

    /// <summary>What nobody has to move stands at rest: that it was left elsewhere is rarer than that it was not moved far enough.</summary>
    private const double LeftBehindChance = 7e-4;

    /// <summary>All mistakes that can be made with this circuit.</summary>
    public static ImmutableArray<Mistake> All(BenchCircuit circuit) =>
    [
        .. Connectors(circuit).SelectMany(c => OfContacts(circuit, c)),
        .. circuit.Actuators.SelectMany((a, i) => OfActuator(a, i)),
    ];

    private static IEnumerable<Connector> Connectors(BenchCircuit circuit)
    {
        var reached = circuit.Accessible.Select(t => circuit.Terminals[t].Part).ToHashSet(StringComparer.Ordinal);
        return circuit.Panel.Parts.OfType<Connector>().Where(c => reached.Contains(c.Designator) && c.Insert.Contacts.Length > 2);
    }

    private static IEnumerable<Mistake> OfContacts(BenchCircuit circuit, Connector connector)
    {
        var name = connector.Designator;
        var faces = new ContactMaps(connector.Insert);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (kind, chance, words, map) in Maps(faces, name))
        {
            var key = string.Join(' ', map.Select(i => i.ToString(CultureInfo.InvariantCulture)));
            var isSame = map.Select((to, from) => to == from).All(same => same);
            if (isSame || (kind == MistakeKind.Shifted && !seen.Add(key))) continue;
            seen.Add(key);
            yield return new Mistake(kind, chance, words) { Contacts = Spread(circuit, connector, map) };
        }
    }

    private static IEnumerable<(MistakeKind Kind, double Chance, string Words, ImmutableArray<int> Map)> Maps(ContactMaps faces, string name)
    {
        yield return (MistakeKind.Mirrored, 1e-2, $"the face of {name} was read from its other side: left and right are exchanged", faces.Mirrored());
        yield return (MistakeKind.Mirrored, 5e-3, $"{name} was counted the other way round", faces.CountedBack());
        foreach (var map in faces.RingsFromOtherEnd())
            yield return (MistakeKind.WrongStart, 3e-3, $"{name} was counted from the wrong ring: rim for centre", map);
        foreach (var shift in new[] { 1, -1, 2, -2, 3, -3 })
        {
            var far = Math.Abs(shift).ToString(CultureInfo.InvariantCulture);
            foreach (var map in faces.RingsFromOtherStart(shift))
                yield return (MistakeKind.WrongStart, 3e-3 / Math.Pow(Math.Abs(shift), 2), $"{name} was counted from the wrong start: each ring {far} {(shift > 0 ? "ahead" : "behind")}", map);
        }

        foreach (var (words, map) in faces.FromOtherCorners())
            yield return (MistakeKind.WrongStart, 3e-3, $"{name} was counted from the wrong corner: {words}", map);
        foreach (var (degrees, map) in faces.Turned())
            yield return (MistakeKind.Turned, 2e-3, $"{name} was held turned by {degrees.ToString("0", CultureInfo.InvariantCulture)} degrees", map);
        var runs = faces.Runs(ShortestRun).ToList();
        foreach (var (first, last, isAhead, map) in runs)
            yield return (MistakeKind.Shifted, Math.Max(1e-5, 5e-3 / runs.Count), $"the run {name}:{first} to {last} was counted one {(isAhead ? "too few: each is really the next contact" : "too many: each is really the contact before")}", map);
    }

    private static ImmutableArray<int> Spread(BenchCircuit circuit, Connector connector, ImmutableArray<int> map)
    {
        var spread = Enumerable.Range(0, circuit.Terminals.Length).ToArray();
        var contacts = connector.Insert.Contacts;
        for (var i = 0; i < contacts.Length; i++)
            spread[circuit.NumberOf(connector.At(contacts[i].Name))] = circuit.NumberOf(connector.At(contacts[map[i]].Name));
        return [.. spread];
    }

    private static IEnumerable<Mistake> OfActuator(Actuator actuator, int index)
    {
        var count = actuator.Positions.Length;
        var same = Enumerable.Range(0, 2 * count).ToImmutableArray();
        var names = actuator.Positions.Select(p => p.Name).ToList();
        for (var i = 0; i < count; i++)
        {
            foreach (var other in new[] { i - 1, i + 1 }.Where(o => o >= 0 && o < count))
            {
                var held = actuator.Positions[i];
                var springs = held.SpringsTo == names[other];
                yield return new Mistake(
                    MistakeKind.NotAtStop, springs ? 1e-2 : held.Name == actuator.Rest.Name ? LeftBehindChance : 2e-3,
                    springs
                        ? $"{actuator.Name} was not held at {held.Name}: it stood at {names[other]}"
                        : $"{actuator.Name} did not reach {held.Name}: it stood at {names[other]}")
                {
                    Actuator = index,
                    IsSprung = springs,
                    Places = same.SetItem(2 * i, 2 * other),
                };
            }
        }

        if (count < 2) yield break;
        for (var i = 0; i < count; i++)
        {
            for (var j = i + 1; j < count; j++)
            {
                yield return new Mistake(MistakeKind.NamedWrong, count == 2 ? 4e-3 : 2e-3, $"{actuator.Name} {names[i]} and {names[j]} were named the wrong way")
                {
                    Actuator = index,
                    Places = same.SetItem(2 * i, 2 * j).SetItem(2 * j, 2 * i),
                };
            }
        }

        if (count < 4) yield break;
        yield return new Mistake(MistakeKind.NamedWrong, 4e-3, $"the positions of {actuator.Name} were named in the wrong order, last for first")
        {
            Actuator = index,
            Places = [.. same.Select(p => p % 2 == 0 ? 2 * (count - 1 - (p / 2)) : p)],
        };
    }
}
