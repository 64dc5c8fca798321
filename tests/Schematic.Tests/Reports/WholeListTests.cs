using System.Text;
using ApprovalTests;
using ApprovalTests.Namers;
using Schematic.Analysis;
using Schematic.Model;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Reports;

/// <summary>
/// Every list in full, as a command prints it and as a pack does, of panels that hold what lists tell apart: a harness in which
/// things differ from wire to wire, one of every kind of part, and those of <c>Panels</c>. Read the kept text beside a change: every word in it is soldered by.
/// </summary>
public sealed class WholeListTests
{
    internal const string Harness = """
        title "Crossing keeper's desk" number CK-7 revision B
        build 3

        actuator LEVER "crossing lever" { normal rest ; check ; reverse }
        actuator BELL "bell key" { out rest ; in springs-to out }
        actuator DIAL "hours" push-to-turn { 1 rest ; 2 ; 3 ; 4 }

        connector J1 "desk as found" price 31 EUR { pins ; spiral 19 ; solder ; size 20 ; spare 17..19 }
        connector P1 "desk plug" price 28.40 EUR { sockets ; mates J1 ; solder ; size 20 ; strip 4.5 mm ; order "round plug, 19 sockets" }
        alternative P1 "the same, used" price 12 EUR

        poles S1..S2 changeover on LEVER rated 30 V 3 A { common J1:1 J1:2 ; normal J1:3 J1:4 ; reverse J1:5 J1:6 }
        switch S3 make on BELL when in { J1:7 J1:8 }
        pole S4 rotary on DIAL make-before-break { common J1:9 ; 1 J1:10 ; 2 J1:11 ; 3 J1:12 ; 4 J1:13 }
        lamp DS1 "road open" 24 V 40 mA green { J1:14 J1:15 }

        supply PS1 "bench supply" 24 V adjustable 22..29 V limit 3 A source 0.1 ohm price 64 EUR { + - }
        fuse F1 1 A slow price 0.90 EUR spares 2
        breaker CB1 3 A
        relay K1 "hold-over" 24 V 30 mA operates 18 V releases 2.4 V rated 30 V 5 A price 7.40 EUR { make ; changeover }
        diode D1 1 A 400 V price 0.12 EUR
        lamp DS2 24 V 50 mA white
        solenoid L1 "lever lock" 24 V 0.5 A operates 18 V on-hand
        lock LEVER at normal unless L1 energised
        board A1 "input board" { inputs IN1..IN4 max 5.5 V pull-up 5 V 10 kohm low 1.5 V high 3.5 V ; ground GND ; meaning IN1 "lever normal" ; meaning IN2 "lever reverse" }
        terminals X1 "desk" price 4.80 EUR { 1..8 ; jumper 1 2 3 ; jumper 6 7 }
        splice SP1

        wire W1 20 AWG red 300 mm PS1:+ -> F1:1
        wire W2 20 AWG red 300 mm F1:2 -> X1:1
        wire W3 22 AWG red/white 450 mm X1:2 -> P1:7
        wire W4 22 AWG orange 450 mm P1:8 -> K1:A1
        wire W5 0.5 mm2 black 200 mm K1:A2 -> X1:6
        wire W6 22 AWG violet 60 mm D1:K -> K1:A1
        wire W7 22 AWG black 60 mm D1:A -> K1:A2
        wire W8 X1:3 -> CB1:1
        wire W9 20 AWG red CB1:2 -> K1:13
        wire W10 20 AWG yellow 1200 mm K1:14 -> L1:A1
        wire W11 20 AWG black 1200 mm L1:A2 -> X1:7
        wire W12 22 AWG white 450 mm P1:1 -> A1:IN1
        wire W13 22 AWG white 450 mm P1:5 -> A1:IN2
        wire W14 22 AWG black 120 mm A1:GND -> X1:6
        wire W15 20 AWG black 300 mm PS1:- -> X1:7
        wire W16 22 AWG black 450 mm P1:3 -> SP1:1
        wire W17 22 AWG black 450 mm SP1:1 -> X1:7
        wire W18 22 AWG blue 40 mm P1:9 -> P1:2
        cable C1 "to the signal" 12 m price 2.40 EUR { core 1 0.75 mm2 brown K1:24 -> DS2:X1 ; core 2 0.75 mm2 white K1:21 -> X1:3 ; screen X1:8 }
        net LIGHT DS2:X2 X1:6

        expect K1 energised when BELL in
        """;

    internal const string Kinds = """
        title "One of each"
        build 2
        limits { drop 5 % ; ambient 30 degC }
        actuator LEVER { normal rest ; reverse }
        actuator WHEEL endless { 0 rest ; 1 ; 2 ; 3 }
        actuator PUSH button { out rest ; in springs-to out }
        connector J1 "unit" { pins ; strip 12 pitch 5 mm ; size 16 ; crimp ; not-traced 11 12 }
        connector J2 { sockets ; grid 3 by 2 ; screw ; on-hand }
        switch S1 make on PUSH when in price 3.80 EUR { J1:1 J1:2 }
        switch S2 break on LEVER when reverse
        pole S3 rotary on WHEEL make-before-break { common ; 0 ; 1 ; 2 ; 3 }
        coded S4 on WHEEL { common ; A ; B ; at 1 A ; at 2 A B ; at 3 B }
        relay K1 24 V 800 ohm operates 18 V price 7 EUR { changeover make-before-break ; make ; make ; break }
        relay K2 "hold-over" 24 V 30 mA on-delay 5 s { delayed-changeover ; make }
        relay K3 800 ohm { make }
        solenoid L1 47 ohm { J1:3 J1:4 }
        lamp DS1 24 V 40 mA red price 2 EUR
        lamp DS2 12 ohm
        lamp DS3 24 V
        led DS4 2.0 V 20 mA green price 0.10 GBP
        diode D1
        diode D2 1 A 400 V
        resistor R1 120 ohm 0.5 W
        resistor R2 90..110 ohm
        resistor R3
        potentiometer RP1 10 kohm 0.5 W
        rheostat RP2 100 ohm 25 W
        photoresistor RL1 dark 1 Mohm lit 5 kohm
        thermistor RT1 10 kohm beta 3950 K over -20..60 degC
        thermistor RT2 80..1500 ohm
        fuse F1 1 A slow spares 3
        fuse F2 2 A
        breaker CB1 3 A
        capacitor C1 100 uF 50 V polarised
        capacitor C2 100 nF
        suppressor RV1 39 V
        rectifier BR1 1.5 A 100 V
        transformer T1 "bell transformer" 230 V secondary 12 V 20 VA
        transistor Q1 30 V 100 mA saturates 0.2 V
        optocoupler U1 1.2 V 10 mA output 30 V 50 mA saturates 0.3 V
        device U2 "block instrument" { terminals 1 2 3 ; ohms 1 2 120 ohm ; open rest }
        synchro B1 26 V rotor 40 ohm stator 30 ohm
        meter P1 "line current" 1 mA 100 ohm
        motor M1 24 V 2 A
        bell HA1 12 V 0.5 A
        buzzer HA2 24 V 30 mA
        heater EH1 24 V 50 W
        keypad KB1 "code lock" { keys 1 2 ; keys 3 4 ; rows J1:5..6 ; columns J1:7..8 }
        supply PS1 24 V limit 1 A
        supply PS2 12 V alternating { L N }
        board A1 { inputs IN1 max 30 V low 2 V high 10 V ; ground GND }
        terminals X1 { 1..3 }
        splice SP1
        wire W1 22 AWG red J1:9 -> ?
        wire W2 PS1:+ -> R1:1
        wire W3 22 AWG 300 mm R1:2 -> DS4:A
        wire W4 22 AWG 300 mm DS4:K -> PS1:-
        """;

    public static TheoryData<string, string> Panels
    {
        get
        {
            var panels = new TheoryData<string, string>();
            foreach (var file in Directory.EnumerateFiles(Repository.PathOf("tests/Schematic.Tests/Reports/Panels"), "*.panel").Order(StringComparer.Ordinal))
                panels.Add(Path.GetFileNameWithoutExtension(file), File.ReadAllText(file));
            return panels;
        }
    }

    [Theory]
    [MemberData(nameof(Panels))]
    [InlineData("harness", Harness)]
    [InlineData("kinds", Kinds)]
    public void The_lists_of_a_panel_read(string name, string text)
    {
        using var scenario = ApprovalResults.ForScenario(name);
        var (panel, findings) = TestPanels.Read(text);
        var context = new AnalysisContext(panel);
        var written = new StringBuilder();
        foreach (var list in ReportLists.All)
        {
            written.Append($"==== {list.Command}\n");
            foreach (var table in list.Build(context)) Write(written, table);
            written.Append($"==== {list.Command}, printed\n");
            foreach (var table in list.Printed(context)) Write(written, table);
        }

        written.Append("==== chart, as it is drawn\n");
        foreach (var table in ContactChart.BuildPrinted(context)) Write(written, table);
        written.Append("==== contacts\n");
        foreach (var connector in panel.Parts.OfType<Connector>())
        {
            Write(written, WorkList.BuildConnector(context, connector));
            foreach (var use in new ContactUses(panel).Of(connector)) written.Append($"{connector.Designator}:{use.Contact} {use.Purpose} [{string.Join(' ', use.Wires.Select(w => w.Designator))}]{(use.IsSpare ? " spare" : "")}{(use.IsNotTraced ? " not traced" : "")}\n");
        }

        written.Append("==== findings\n");
        if (FindingsList.Build(PanelChecker.Check(panel, findings)) is { } open) Write(written, open);
        Approvals.Verify(written.ToString());
    }

    private static void Write(StringBuilder written, ReportTable table)
    {
        written.Append($"-- {table.Title}{(table.IsDense ? " (dense)" : "")}{(table.IsExtra ? " (extra)" : "")}\n");
        foreach (var line in table.Lead) written.Append($"! {line}\n");
        written.Append(string.Join(" | ", table.Columns.Select(c => $"{c.Key}={c.Header}{(c.Align == ColumnAlign.Left ? "" : $" {c.Align}")}"))).Append('\n');
        foreach (var row in table.Rows) written.Append(string.Join(" | ", row)).Append('\n');
        foreach (var note in table.Notes) written.Append($"* {note}\n");
        written.Append('\n');
    }
}
