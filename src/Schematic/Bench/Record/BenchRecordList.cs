using System.Collections.Immutable;
using System.Globalization;
using Schematic.Bench.Diagnosis;
using Schematic.Bench.RingOut;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Bench.Record;

/// <summary>The bench record of a panel as tables: who measured when and with what, what was found, what is still open.</summary>
public static class BenchRecordList
{
    /// <summary>The tables of all records; none where the panel keeps no readings.</summary>
    public static ImmutableArray<ReportTable> Build(Panel panel)
    {
        var records = BenchRecord.Of(panel);
        if (records.IsEmpty) return [];
        var results = records.ToDictionary(r => r, r => Diagnoser.Diagnose(r.Circuit, r.Read.Readings));
        return
        [
            Records(records, results), Contacts(records), .. Contradicted(records),
            .. records.Where(r => !results[r].IsPass && results[r].UsedReadings > 0).Take(1).SelectMany(r => DiagnosisList.Build(results[r])),
        ];
    }

    /// <summary>What was read that the panel does not give; no table where there is nothing.</summary>
    private static IEnumerable<ReportTable> Contradicted(ImmutableArray<BenchRecord> records)
    {
        ImmutableArray<ImmutableArray<string>> rows =
        [
            .. from record in records
               from found in record.Contradicted
               select ImmutableArray.Create(
                   $"{record.Kept.Text.FileName}, line {Number(found.Noted.Span.Start.Line)}",
                   StandText.Describe(found.Placement.Stand, record.Circuit.Actuators),
                   $"{TerminalText.Of(found.Noted.Red)}{MeterTestText.Joined(found.Noted.Test, isPair: false)}{TerminalText.Of(found.Noted.Black)}",
                   found.Noted.Value!.Text, found.Expected.Text),
        ];
        if (rows.IsEmpty) yield break;
        yield return new ReportTable(
            "Readings that this panel does not give",
            [new("where", "Noted in"), new("hold", "Held"), new("leads", "Leads"), new("read", "Read"), new("expected", "The panel gives")], rows);
    }

    private static ReportTable Records(ImmutableArray<BenchRecord> records, Dictionary<BenchRecord, DiagnosisResult> results) => new(
        "Bench record",
        [
            new("file", "File"), new("measured", "Measured"), new("when", "When"), new("who", "Who"), new("meter", "Meter and leads"),
            new("readings", "Readings", ColumnAlign.Right), new("found", "What was found"), new("open", "Still open"),
        ],
        [.. records.Select(r => Row(r, results[r]))])
    {
        Notes =
        [
            .. records.Where(r => r.IsChanged).Select(r => $"{r.Kept.Text.FileName}: the panel was changed after these readings were taken."),
            .. records.SelectMany(r => r.Read.Readings.Remarks.Select(remark => $"{r.Kept.Text.FileName}: {remark}")),
        ],
    };

    private static ImmutableArray<string> Row(BenchRecord record, DiagnosisResult result)
    {
        var readings = record.Read.Readings;
        var left = record.Contacts.Count(c => c.Value == ContactProof.NotMeasured);
        var blanks = readings.Readings.Length - readings.Taken.Count();
        return
        [
            record.Kept.Text.FileName, RingOutList.SideWords(record.Circuit), readings.Date, readings.By,
            $"{readings.Meter.Name}{(readings.Meter.Name.Length > 0 ? ", " : "")}{ValueText.Ohms(readings.Meter.LeadOhms)}{(readings.Meter.IsZeroed ? " taken off" : " in the readings")}",
            Number(readings.Taken.Count()), DiagnosisList.Verdict(result),
            (left, blanks) switch
            {
                (0, 0) => "nothing",
                (0, _) => Blank(blanks),
                (_, 0) => NotMeasured(left),
                _ => $"{NotMeasured(left)}, {Blank(blanks)}",
            },
        ];
    }

    private static string Blank(int count) => count == 1 ? "1 reading left blank" : $"{Number(count)} readings left blank";

    private static string NotMeasured(int count) => count == 1 ? "1 contact not measured" : $"{Number(count)} contacts not measured";

    private static ReportTable Contacts(ImmutableArray<BenchRecord> records)
    {
        var all = records.SelectMany(r => r.Contacts).GroupBy(c => c.Key, c => c.Value).ToDictionary(g => g.Key, g => g.Max());
        return new ReportTable(
            "Contacts proved with the meter",
            [new("state", "State"), new("contacts", "Contacts")],
            [
                .. from state in new[] { ContactProof.Contradicted, ContactProof.Proved, ContactProof.NotMeasured }
                   let contacts = all.Where(c => c.Value == state).Select(c => c.Key).Order().ToList()
                   where contacts.Count > 0
                   select ImmutableArray.Create(Words(state), TerminalText.Of(contacts)),
            ]);
    }

    private static string Words(ContactProof proof) => proof switch
    {
        ContactProof.Proved => "proved",
        ContactProof.Contradicted => "CONTRADICTED",
        _ => "not yet measured",
    };

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
