using System.Collections.Immutable;
using Schematic.Bench.Diagnosis;
using Schematic.Bench.Readings;
using Schematic.Model;

namespace Schematic.Bench.Record;

/// <summary>How far a contact was proved with the meter.</summary>
public enum ContactProof
{
    /// <summary>No reading was taken at it.</summary>
    NotMeasured,

    /// <summary>Every reading at it is what a sound unit gives.</summary>
    Proved,

    /// <summary>A reading at it cannot be that of a sound unit.</summary>
    Contradicted,
}

/// <summary>A readings file that a panel keeps, read against it.</summary>
/// <param name="Kept">The file as the panel names it.</param>
/// <param name="Read">What stands in it.</param>
/// <param name="Circuit">What lay on the bench, as the panel has it now.</param>
public sealed record BenchRecord(KeptReadings Kept, ReadingsResult Read, BenchCircuit Circuit)
{
    /// <summary>The records of a panel, in the order in which it names them.</summary>
    public static ImmutableArray<BenchRecord> Of(Panel panel) =>
    [
        .. from kept in panel.Readings
           let read = ReadingsLoader.Load(kept.Text, panel)
           select new BenchRecord(kept, read, BenchCircuit.Read(panel, read.Readings.Side ?? BenchCut.UsualSide(panel), read.Readings.Part)),
    ];

    /// <summary>Whether the panel states something else than when it was measured; a file without a print does not tell.</summary>
    public bool IsChanged => Read.Readings.Print.Length > 0 && Read.Readings.Print != PanelPrint.Of(Circuit.Panel);

    /// <summary>The readings that a sound unit cannot give.</summary>
    public ImmutableArray<NotedReading> Contradictions => [.. Contradicted.Select(c => c.Noted)];

    /// <summary>The readings that a sound unit cannot give, each with what it gives.</summary>
    public ImmutableArray<(NotedReading Noted, Placement Placement, Reading Expected)> Contradicted =>
        [.. Judged().Where(j => !j.Agrees).Select(j => (j.Noted, j.Placement, j.Expected))];

    /// <summary>For each contact on the bench how far it was proved.</summary>
    public ImmutableDictionary<TerminalId, ContactProof> Contacts
    {
        get
        {
            var proofs = Circuit.Accessible.Select(t => Circuit.Terminals[t]).ToDictionary(t => t, _ => ContactProof.NotMeasured);
            foreach (var (noted, _, _, agrees) in Judged())
            {
                foreach (var contact in noted.Red.Concat(noted.Black).Where(proofs.ContainsKey))
                    proofs[contact] = agrees ? (ContactProof)Math.Max((int)proofs[contact], (int)ContactProof.Proved) : ContactProof.Contradicted;
            }

            return proofs.ToImmutableDictionary();
        }
    }

    /// <summary>How far each contact was proved, all records together: what contradicts counts before what proves.</summary>
    public static ImmutableDictionary<TerminalId, ContactProof> ProofOf(Panel panel) => Of(panel).SelectMany(r => r.Contacts)
        .GroupBy(c => c.Key, c => c.Value).ToImmutableDictionary(g => g.Key, g => g.Max());

    private IEnumerable<(NotedReading Noted, Placement Placement, Reading Expected, bool Agrees)> Judged()
    {
        var sound = Explained.Of(Circuit, Explanation.Sound, new ReadingCache(Read.Readings.Meter));
        foreach (var noted in Read.Readings.Taken)
        {
            if (ReadingPlacement.Of(Circuit, noted) is not { } placement) continue;
            var expected = sound.Read(placement);
            yield return (noted, placement, expected, Likelihood.Of(noted.Value!, expected, Read.Readings.Meter) > Likelihood.Against);
        }
    }
}
