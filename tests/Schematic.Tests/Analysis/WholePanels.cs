using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>
/// Small panels that between them hold what the analysis tells apart: every kind of part, fed well and badly, switched in every way
/// that the language knows, known and not known. What is found of them is kept in full (<c>WholeCircuitTests</c>,
/// <c>WholeProofTests</c>, <c>WholeLoadsTests</c>).
/// </summary>
internal static class WholePanels
{
    /// <summary>The panels by their names.</summary>
    public static readonly ImmutableSortedDictionary<string, string> All = new Dictionary<string, string>
    {
        // Signal lamps on a shared feed: fuses in line and side by side, a rotary switch, contacts in parallel, lamps in series, too dim
        // and too bright, one too weak that a relay's contact feeds.
        ["lamps"] = """
            limits { ambient 40 degC  insulation 105 degC  drop 2 % }
            actuator DIAL { off rest ; red ; amber ; green }
            actuator KEY { out rest ; in springs-to out }
            supply PS1 24 V limit 1.5 A source 0.2 ohm
            fuse F1 1 A
            fuse F2 2 A
            breaker CB1 500 mA
            pole S1 rotary on DIAL rated 24 V 0.25 A { common ; red ; amber ; green }
            switch S2 make on KEY when in rated 24 V 0.3 A
            switch S3 make on KEY when in
            lamp DS1 "red" 24 V 100 mA red
            lamp DS2 "amber" 24 V 100 mA
            lamp DS3 "green" 28 V 40 mA
            lamp DS4 12 V 80 mA
            lamp DS5 12 V 80 mA
            lamp DS6 48 V 20 mA
            lamp DS7 18 V 50 mA
            wire W1 20 AWG 2 m PS1:+ -> F1:1
            wire W2 20 AWG 2 m F1:2 -> S1:common
            wire W3 24 AWG 1 m S1:red -> DS1:X1
            wire W4 24 AWG 1 m S1:amber -> DS2:X1
            wire W5 24 AWG 30 m S1:green -> DS3:X1
            wire W6 24 AWG 500 mm DS1:X2 -> DS2:X2
            wire W7 24 AWG 500 mm DS2:X2 -> DS3:X2
            wire W8 20 AWG 3 m DS1:X2 -> PS1:-
            wire W9 22 AWG 1 m PS1:+ -> F2:1
            wire W10 28 AWG 1 m F2:2 -> S2:1
            wire W11 28 AWG 1 m S2:1 -> S3:1
            wire W12 28 AWG 1 m S2:2 -> S3:2
            wire W13 28 AWG 1 m S3:2 -> CB1:1
            wire W14 24 AWG 1 m CB1:2 -> DS4:X1
            wire W15 24 AWG 1 m DS4:X2 -> DS5:X1
            wire W16 24 AWG 1 m DS5:X2 -> PS1:-
            wire W17 24 AWG 1 m CB1:2 -> DS6:X1
            wire W18 24 AWG 1 m DS6:X2 -> PS1:-
            wire W19 24 AWG 1 m CB1:2 -> DS7:X1
            wire W20 24 AWG 1 m DS7:X2 -> PS1:-
            expect DS1 energised when DIAL red
            expect DS6 energised when KEY in
            """,

        // Coils: one that holds itself through an economy resistor, one behind long wires, one too weak and all that waits for it, one
        // known by its resistance alone, one fed both ways, diodes and suppressors across them.
        ["coils"] = """
            limits { ambient 25 degC  insulation 90 degC  bundle 6 }
            actuator START { out rest ; in springs-to out }
            actuator STOP { out rest ; in springs-to out }
            actuator LEVER { normal rest ; middle ; reverse }
            supply PS1 24 V adjustable 18..30 V limit 2 A source 0.5 ohm
            connector J1 "lock unit" { pins ; strip 4 pitch 5 mm ; size 20 }
            switch S1 make on START when in rated 30 V 1 A
            switch S2 break on STOP when in rated 30 V 0.2 A
            pole S3 changeover on LEVER { common ; normal,middle ; reverse }
            relay K1 24 V 400 ohm operates 16 V releases 6 V rated 30 V 0.5 A { changeover ; make ; break }
            relay K2 24 V 800 ohm { make }
            relay K3 48 V 2 kohm { make }
            solenoid L1 24 V 60 ohm operates 22 V suppressed
            solenoid L2 24 V 100 ohm operates 23.2 V { J1:1 J1:2 }
            solenoid L3 12 V 100 ohm max 20 V
            solenoid L4 24 V 300 ohm
            resistor R1 500 ohm 0.25 W
            resistor R2 220 ohm
            diode D1 10 mA 400 V
            diode D2 1 A 40 V
            suppressor RV1 20 V
            suppressor RV2 39 V
            wire W1 22 AWG 1 m PS1:+ -> S2:1
            wire W2 22 AWG 1 m S2:2 -> S1:1
            wire W3 22 AWG 1 m S1:2 -> K1:A1
            wire W4 22 AWG 1 m S1:1 -> R1:1
            wire W5 22 AWG 1 m R1:2 -> K1:11
            wire W6 22 AWG 1 m K1:14 -> K1:A1
            wire W7 22 AWG 1 m K1:A2 -> PS1:-
            wire W8 28 AWG 60 m K1:23 -> L1:A1
            wire W9 22 AWG 1 m S2:2 -> K1:23
            wire W10 22 AWG 60 m L1:A2 -> PS1:-
            wire W11 22 AWG 1 m K1:24 -> J1:1
            wire W12 22 AWG 1 m J1:2 -> PS1:-
            wire W13 22 AWG 1 m S2:2 -> K3:A1
            wire W14 22 AWG 1 m K3:A2 -> PS1:-
            wire W15 22 AWG 1 m S2:2 -> K3:13
            wire W16 22 AWG 1 m K3:14 -> K2:A1
            wire W17 22 AWG 1 m K2:A2 -> PS1:-
            wire W18 22 AWG 1 m PS1:+ -> S3:common
            wire W19 22 AWG 1 m S3:normal -> L3:A1
            wire W20 22 AWG 1 m L3:A2 -> R2:1
            wire W21 22 AWG 1 m R2:2 -> PS1:-
            wire W22 22 AWG 1 m S3:reverse -> L4:A2
            wire W23 22 AWG 1 m L4:A1 -> PS1:-
            wire W24 22 AWG 200 mm D1:K -> K1:A1
            wire W25 22 AWG 200 mm D1:A -> K1:A2
            wire W26 22 AWG 200 mm RV1:1 -> L3:A2
            wire W27 22 AWG 200 mm RV1:2 -> L3:A1
            wire W28 22 AWG 200 mm RV2:1 -> K2:A1
            wire W29 22 AWG 200 mm RV2:2 -> K2:A2
            wire W30 22 AWG 200 mm D2:K -> L4:A2
            wire W31 22 AWG 200 mm D2:A -> L4:A1
            lock LEVER at middle unless K2 energised
            lock LEVER at normal unless L2 energised or START in
            """,

        // Mains and bell current: transformer, rectifier with a smoothed and a plain load, half-waves through diodes, an indicator, a
        // short in one half-wave only.
        ["bell"] = """
            actuator PUSH { out rest ; in springs-to out }
            actuator PLUG { out rest ; in }
            supply PS1 230 V alternating { L N }
            transformer T1 230 V secondary 12 V 20 VA
            fuse F1 1 A
            switch S1 make on PLUG when in
            switch S2 make on PUSH when in
            rectifier BR1 0.2 A 15 V drop 0.8 V
            bell HA1 12 V 0.5 A
            buzzer HA2 12 V 30 mA operates 4 V
            motor M1 12 V 0.4 A
            heater EH1 12 V 10 W max 12.5 V
            lamp DS1 6 V 100 mA
            led DL1 2 V 20 mA
            led DL2 2 V 20 mA
            resistor R1 470 ohm 0.25 W
            resistor R2 1 kohm
            diode D1
            diode D2
            board A1 { inputs IN1 max 30 V pull-down 10 kohm ; ground GND }
            wire W1 0.75 mm2 2 m PS1:L -> S1:1
            wire W2 0.75 mm2 2 m S1:2 -> F1:1
            wire W3 0.75 mm2 100 mm F1:2 -> T1:1
            wire W4 0.75 mm2 2 m T1:2 -> PS1:N
            wire W5 0.5 mm2 5 m T1:3 -> S2:1
            wire W6 0.5 mm2 5 m S2:2 -> HA1:1
            wire W7 0.5 mm2 5 m HA1:2 -> T1:4
            wire W8 0.5 mm2 1 m T1:3 -> BR1:AC1
            wire W9 0.5 mm2 1 m T1:4 -> BR1:AC2
            wire W10 0.5 mm2 1 m BR1:+ -> M1:1
            wire W11 0.5 mm2 1 m BR1:- -> M1:2
            wire W12 0.5 mm2 1 m T1:3 -> D1:A
            wire W13 0.5 mm2 1 m D1:K -> DS1:X1
            wire W14 0.5 mm2 1 m DS1:X2 -> T1:4
            wire W15 0.5 mm2 1 m T1:3 -> R1:1
            wire W16 0.5 mm2 1 m R1:2 -> DL1:A
            wire W17 0.5 mm2 1 m DL1:K -> T1:4
            wire W18 0.5 mm2 1 m S2:2 -> HA2:1
            wire W19 0.5 mm2 1 m HA2:2 -> D2:A
            wire W20 0.5 mm2 1 m D2:K -> T1:4
            wire W21 0.5 mm2 1 m S2:2 -> EH1:1
            wire W22 0.5 mm2 1 m EH1:2 -> T1:4
            wire W23 0.5 mm2 1 m S2:2 -> A1:IN1
            wire W24 0.5 mm2 1 m A1:GND -> T1:4
            wire W25 0.5 mm2 1 m S2:2 -> R2:1
            wire W26 0.5 mm2 1 m R2:2 -> DL2:K
            wire W27 0.5 mm2 1 m DL2:A -> T1:4
            expect HA1 energised when PUSH in and PLUG in
            """,

        // Outputs: a transistor, one turned round, one beyond what it stands, an optocoupler that is driven and one that is not.
        ["outputs"] = """
            actuator KEY { off rest ; on }
            supply PS1 24 V limit 0.5 A
            supply PS2 5 V
            transistor Q1 30 V 100 mA saturates 0.2 V
            transistor Q2 20 V 50 mA
            transistor Q3 40 V 500 mA
            optocoupler U1 1.2 V 10 mA output 30 V 50 mA saturates 0.3 V
            optocoupler U2
            optocoupler U3 1.2 V 20 mA output 15 V 10 mA
            switch S1 make on KEY when on
            lamp DS1 24 V 80 mA
            lamp DS2 24 V 80 mA
            lamp DS3 24 V 40 mA
            relay K1 24 V 600 ohm suppressed { make }
            resistor R1 330 ohm
            resistor R2 2.2 kohm
            resistor R3 100 ohm
            resistor R4 4.7 kohm
            board A1 { inputs IN1..IN2 max 5.5 V pull-up 5 V 10 kohm low 1 V high 4 V ; inputs IN3 max 30 V ; ground GND }
            net P24 PS1:+ R4:2 DS1:X1 DS2:X1 DS3:X1 K1:A1
            net P5 PS2:+ S1:1 R1:1 R2:1
            net M PS1:- PS2:- Q1:E Q2:C Q3:E U1:E U2:K U1:K U3:K A1:GND U2:E U3:E
            net D1 DS1:X2 Q1:C
            net D2 DS2:X2 Q2:E
            net D3 DS3:X2 Q3:C A1:IN3
            net D4 K1:A2 U3:C
            net E1 R1:2 U1:A
            net E2 R2:2 U2:A
            net E3 S1:2 R3:1
            net E4 R3:2 U3:A
            net I1 U1:C A1:IN1 R4:1
            net I2 U2:C A1:IN2
            expect A1:IN2 high
            expect A1:IN1 low
            """,

        // What varies and what is known as a range: track, rheostat, thermistor, photoresistor, a resistor nobody has measured yet.
        ["varying"] = """
            actuator DIM { off rest ; on }
            supply PS1 12 V limit 1 A
            switch S1 make on DIM when on rated 12 V 1 A
            potentiometer RP1 1 kohm 0.5 W
            potentiometer RP2 100 ohm 1 W wiper 10..90 %
            rheostat RP3 50 ohm 1 W
            rheostat RP4
            thermistor RT1 10 kohm beta 3950 K over -20..60 degC
            thermistor RT2 80..1500 ohm
            photoresistor RL1 dark 1 Mohm lit 5 kohm 0.01 W
            resistor R1 90..110 ohm
            resistor R2 400..900 ohm varies
            resistor R3
            lamp DS1 12 V 100 mA
            lamp DS2 12 V 100 mA
            lamp DS3 12 V 20 mA
            relay K1 12 V 400 ohm suppressed { make }
            meter P1 1 mA 100 ohm
            diode D1
            board A1 { inputs IN1..IN4 max 15 V low 4 V high 8 V ; inputs IN5 max 15 V pull-up 12 V 10 kohm ; ground GND }
            net P PS1:+ R3:2 S1:1 RP1:1 RT1:1 RT2:1 RL1:1 D1:A
            net M PS1:- RP1:3 A1:GND DS1:X2 DS2:X2 K1:A2 P1:- R2:2 DS3:X2 RT1:2
            net A RP1:2 A1:IN1
            net B S1:2 RP3:1 RP2:1
            net C RP3:2 DS1:X1
            net D RP2:2 DS2:X1
            net E RT2:2 K1:A1
            net F RL1:2 P1:+
            net G D1:K R1:1
            net H R1:2 R2:1 A1:IN2
            net T R3:1 A1:IN3 RP4:1
            net K RP4:2 DS3:X1
            net L A1:IN5 RP2:3
            expect A1:IN1 low
            expect DS1 energised when DIM on
            """,

        // Half traced: contacts nobody has followed, positions nobody has read, ratings and resistances nobody knows, a wire to nowhere.
        ["half-traced"] = """
            actuator LEVER { normal rest ; check ; reverse }
            actuator KEY { off rest ; on }
            connector J1 "found unit" { pins ; strip 8 pitch 5 mm ; not-traced 5 6 7 }
            connector J2 "other unit" { pins ; strip 10 pitch 5 mm ; not-traced rest }
            supply PS1 24 V limit 1 A
            switch S1 make on LEVER when ? { J1:1 J1:2 }
            switch S2 make on KEY when on
            lamp DS1 24 V 40 mA { J1:3 J1:4 }
            lamp DS2 24 V
            lamp DS3 60 ohm
            solenoid L1 47 ohm suppressed
            relay K1 800 ohm suppressed { make }
            relay K2 24 V suppressed { make }
            led DL1
            device U1 "block instrument" { terminals 1 2 3 4 ; ohms 1 2 120 ohm ; open 1 3 }
            board A1 { inputs IN1..IN2 max 30 V ; ground GND }
            wire W1 22 AWG 1 m PS1:+ -> J1:1
            wire W2 22 AWG 1 m J1:2 -> J1:3
            wire W3 22 AWG 1 m J1:4 -> PS1:-
            wire W4 22 AWG 1 m PS1:+ -> S2:1
            wire W5 22 AWG 1 m S2:2 -> L1:A1
            wire W6 22 AWG 1 m L1:A2 -> PS1:-
            wire W7 22 AWG 1 m J1:5 -> PS1:+
            wire W8 22 AWG 1 m J1:6 -> A1:IN1
            wire W9 22 AWG 1 m J1:7 -> DS2:X1
            wire W10 22 AWG 1 m DS2:X2 -> PS1:-
            wire W11 22 AWG 1 m S2:2 -> K1:A1
            wire W12 22 AWG 1 m K1:A2 -> PS1:-
            wire W13 22 AWG 1 m PS1:+ -> K1:13
            wire W14 22 AWG 1 m K1:14 -> DS3:X1
            wire W15 22 AWG 1 m DS3:X2 -> PS1:-
            wire W16 22 AWG 1 m S2:2 -> K2:A1
            wire W17 22 AWG 1 m K2:A2 -> PS1:-
            wire W18 22 AWG 1 m U1:1 -> PS1:+
            wire W19 22 AWG 1 m U1:3 -> A1:IN2
            wire W20 22 AWG 1 m U1:4 -> PS1:-
            wire W21 22 AWG 1 m A1:GND -> PS1:-
            wire W22 22 AWG 1 m S2:2 -> DL1:A
            wire W23 22 AWG 1 m DL1:K -> ?
            expect A1:IN1 high
            expect DS1 energised when LEVER reverse
            never PS1:+ reaches A1:IN2
            """,

        // More open contacts than are told apart, each of them with something on it.
        ["many-open"] = """
            actuator KEY { off rest ; on }
            connector J1 "found unit" { pins ; strip 10 pitch 5 mm ; not-traced 1..8 ; spare 9..10 }
            supply PS1 24 V
            switch S1 make on KEY when on
            switch S2 break on KEY when on
            lamp DS1 24 V 40 mA
            board A1 { inputs IN1 max 5 V pull-up 5 V 10 kohm ; ground GND }
            terminals X1 { 1..6 }
            net P PS1:+ S1:1
            net A S1:2 J1:1
            net L1 J1:2 DS1:X1
            net B J1:8 A1:IN1
            net T3 J1:3 X1:3
            net T4 J1:4 X1:4
            net T5 J1:5 X1:5
            net T6 J1:6 S2:1
            net M PS1:- DS1:X2 A1:GND J1:7 S2:2
            expect DS1 released when KEY off
            never J1:1 reaches J1:8
            never J1:3 J1:4 J1:5 reaches J1:8
            """,

        // Time: a flasher of two relays, an on-delay, an off-delay, one of unknown delay, a claim about the time before a delay is over.
        ["delays"] = """
            actuator KEY { off rest ; on }
            actuator CALL { out rest ; in springs-to out }
            supply PS1 24 V switched
            switch S1 make on KEY when on
            switch S2 make on CALL when in
            relay K1 24 V 800 ohm on-delay 2 s suppressed { delayed-changeover ; make }
            relay K2 24 V 800 ohm off-delay 5 s suppressed { delayed-make ; changeover }
            relay K3 24 V 800 ohm on-delay 1 s off-delay 1 s suppressed { delayed-break ; delayed-make }
            relay K4 24 V 800 ohm off-delay 3 s suppressed { delayed-make ; make }
            lamp DS1 24 V 40 mA
            lamp DS2 24 V 40 mA
            net P PS1:+ S1:1 S2:1 K2:17 K3:27 K1:23
            net M PS1:- K1:A2 K2:A2 K3:A2 K4:A2 DS1:X2 DS2:X2
            net A S1:2 K3:15
            net B K3:16 K3:A1
            net C S2:2 K2:A1
            net D K2:18 DS1:X1
            net E K3:28 K1:A1
            net F K1:15 DS2:X1
            net G K1:18 K1:24
            net H K1:16 K4:A1
            expect DS1 energised when CALL in
            expect K2 released when PS1 off
            expect DS1 released when K2 delayed-released
            """,

        // In passing: poles and a relay that make before they break, an endless wheel, a claim that asks for the moment between.
        ["passing"] = """
            actuator DIAL endless { 1 rest ; 2 ; 3 ; 4 }
            actuator LEVER { normal rest ; check ; reverse }
            actuator GRIP { left springs-to centre ; centre rest ; right springs-to centre }
            actuator PUSH button { out rest ; in springs-to out }
            actuator DIMMER push-to-turn { off rest ; half ; full }
            supply PS1 24 V
            supply PS2 12 V
            pole S1 rotary on DIAL make-before-break { common ; 1 ; 2 ; 3 ; 4 }
            pole S2 changeover on LEVER { common ; normal ; reverse }
            pole S3 rotary on GRIP make-before-break { common ; left ; centre ; right }
            pole S4 rotary on DIMMER { common ; off ; half ; full }
            switch S5 make on PUSH when in
            relay K1 24 V 800 ohm suppressed { changeover make-before-break ; changeover }
            lamp DS1 24 V 40 mA
            board A1 { inputs IN1..IN5 max 30 V pull-down 10 kohm low 3 V high 10 V ; ground GND }
            net P PS1:+ S1:common S2:common S5:1 K1:12 S4:common
            net M PS1:- PS2:- A1:GND K1:A2 DS1:X2
            net Q PS2:+ S3:common
            net A S1:1 A1:IN1
            net B S1:4 A1:IN2
            net C S2:normal A1:IN3
            net D S2:reverse A1:IN4
            net E S3:left A1:IN5
            net F S5:2 K1:A1
            net G K1:11 DS1:X1
            net H K1:14 S4:half
            expect A1:IN3 low in passing when LEVER check reverse
            expect A1:IN1 high in passing when DIAL 1 2
            never PS1:+ reaches S1:3 when DIAL 1
            """,

        // Supplies: two through diodes onto one feed, one that floats, one switched, one adjustable whose loads ask for more than one
        // setting gives.
        ["supplies"] = """
            actuator KEY { off rest ; on }
            supply PS1 24 V limit 1 A source 0.3 ohm switched
            supply PS2 26 V adjustable 20..28 V limit 100 mA source 1 ohm
            supply PS3 9 V
            supply PS4 20 V adjustable 12..30 V
            supply PS5 60 V adjustable 50..150 V
            diode D1
            diode D2
            switch S1 make on KEY when on
            lamp DS1 24 V 80 mA
            lamp DS2 9 V 50 mA
            relay K1 24 V 600 ohm suppressed { make }
            relay K2 12 V 200 ohm max 14 V operates 9 V suppressed { make }
            solenoid L1 24 V 200 ohm operates 23 V suppressed
            solenoid L2 48 V 400 ohm suppressed
            resistor R1 1 kohm
            resistor R2 1 kohm
            board A1 { inputs IN1 max 30 V pull-down 22 kohm ; ground GND }
            wire W1 22 AWG 3 m PS1:+ -> D1:A
            wire W2 22 AWG 3 m PS2:+ -> D2:A
            wire W3 22 AWG 100 mm D1:K -> D2:K
            wire W4 22 AWG 3 m D1:K -> S1:1
            wire W5 22 AWG 3 m S1:2 -> DS1:X1
            wire W6 22 AWG 3 m S1:2 -> K1:A1
            wire W7 22 AWG 3 m DS1:X2 -> PS1:-
            wire W8 22 AWG 3 m K1:A2 -> PS1:-
            wire W9 22 AWG 3 m PS2:- -> PS1:-
            wire W10 22 AWG 3 m PS3:+ -> R1:1
            wire W11 22 AWG 3 m R1:2 -> D1:K
            wire W12 22 AWG 3 m PS3:- -> DS2:X1
            wire W13 22 AWG 3 m DS2:X2 -> PS3:+
            wire W14 22 AWG 3 m PS4:+ -> K2:A1
            wire W15 22 AWG 3 m K2:A2 -> PS4:-
            wire W16 22 AWG 3 m PS4:+ -> L1:A1
            wire W17 22 AWG 3 m L1:A2 -> PS4:-
            wire W18 22 AWG 3 m PS4:+ -> A1:IN1
            wire W19 22 AWG 3 m A1:GND -> PS4:-
            wire W20 22 AWG 3 m PS5:+ -> L2:A1
            wire W21 22 AWG 3 m L2:A2 -> PS5:-
            wire W22 22 AWG 3 m PS5:+ -> R2:1
            wire W23 22 AWG 3 m R2:2 -> PS5:-
            expect DS1 energised when KEY on and PS1 off
            """,

        // Inputs: a keypad, a coded wheel, levels between low and high, one below its ground, one above its most, one that floats, a
        // way through a diode and a lamp.
        ["inputs"] = """
            actuator WHEEL endless { 0 rest ; 1 ; 2 ; 3 }
            actuator KEY { off rest ; on }
            supply PS1 24 V adjustable 20..28 V
            supply PS2 12 V
            keypad KB1 { keys 1 2 ; keys 3 4 }
            coded S1 on WHEEL gray { common ; A "0110" ; B "0011" }
            switch S2 make on KEY when on
            pole S3 changeover on KEY { common ; off ; on }
            diode D1
            diode D2
            lamp DS1 24 V 40 mA
            resistor R1 10 kohm
            resistor R2 10 kohm
            resistor R3 1 kohm
            resistor R4 10 kohm
            board A1 { inputs IN1..IN4 max 5.5 V pull-up 5 V 10 kohm low 1.5 V high 3.5 V ; inputs IN5..IN6 max 30 V pull-down 10 kohm ; inputs IN7..IN9 max 13 V low 3 V high 8 V ; ground GND }
            board A2 { inputs IN1 ; inputs IN2 low 2 V ; ground GND }
            net M PS1:- A1:GND PS2:+ S1:common KB1:C1 S3:common
            net N PS2:- R1:1
            net A S1:A A1:IN1
            net B S1:B A1:IN2
            net C KB1:R1 A1:IN3
            net D KB1:R2 D1:A
            net E D1:K A1:IN5
            net F PS1:+ S2:1 DS1:X1 R2:1 R4:2
            net G S2:2 A1:IN6
            net H R1:2 A1:IN7
            net T R2:2 A1:IN8 R3:1
            net J DS1:X2 D2:A
            net K D2:K A1:IN9
            net L S3:on R3:2
            net O S3:off A1:IN4
            net Q A2:IN1 KB1:C2
            net U A2:GND R4:1
            expect A1:IN1 low when WHEEL 1 2
            expect A1:IN6 high when KEY on
            expect A1:IN3 low when KB1-1 pressed
            """,

        // General devices: windings in a star, ranges, diodes, a coil that moves contacts, limits of volts and amperes, capacitors.
        ["devices"] = """
            actuator LEVER { normal rest ; reverse }
            supply PS1 24 V limit 2 A
            supply PS2 26 V alternating
            switch S1 make on LEVER when reverse
            device U1 "star" { terminals 1 2 3 ; ohms 1 2 30 ohm ; ohms 2 3 30 ohm ; ohms 1 3 30 ohm ; open rest }
            device U2 "instrument" { terminals 1 2 3 4 5 6 ; coil 1 2 24 V 800 ohm operates 18 V ; joined 3 4 when U2 energised ; diode 5 6 ; ohms 4 5 100 ohm ; limit 3 4 20 V 0.05 A ; limit 4 5 10 V 0.1 A ; open rest }
            device U3 "line" { terminals 1 2 3 ; winding 1 2 30..40 ohm ; joined 2 3 ; open rest }
            device U4 "unknown winding" { terminals 1 2 ; winding 1 2 ; open rest }
            synchro B1 26 V rotor 40 ohm stator 30 ohm
            capacitor C1 100 uF 16 V polarised
            capacitor C2 100 nF 50 V
            capacitor C3 10 uF polarised
            lamp DS1 24 V 100 mA
            resistor R1 60 ohm
            net P PS1:+ S1:1 U2:3 C1:2 C2:1
            net M PS1:- U1:2 U2:2 U2:6 U3:3 U4:2 C1:1 C2:2 C3:1 DS1:X2
            net A S1:2 U1:1 U2:1 U3:1 U4:1 C3:2
            net B U1:3 DS1:X1
            net C PS2:+ B1:R1 B1:S2
            net E R1:2 B1:S3
            net D PS2:- B1:R2 B1:S1 R1:1
            expect U2 energised when LEVER reverse
            """,

        // One supply guarded against reversal by a diode in its plus, by two in its minus: all behind them stands some tenths of a volt
        // nearer, an input and a lamp before them do not.
        ["guarded"] = """
            actuator KEY { off rest ; on }
            actuator LEVER { normal rest ; reverse }
            supply PS1 24 V adjustable 22..28 V source 0.2 ohm
            diode D1 3 A 100 V
            diode D2 drop 0.4 V
            diode D3
            diode D4
            switch S1 make on KEY when on
            pole S2 changeover on LEVER { common ; normal ; reverse }
            lamp DS1 24 V 200 mA
            lamp DS2 24 V 40 mA
            relay K1 24 V 400 ohm operates 19 V releases 5 V { make }
            relay K2 12 V 400 ohm operates 10.9 V suppressed { changeover }
            resistor R1 390 ohm
            resistor R2 1 kohm
            board A1 { inputs IN1..IN2 max 30 V pull-up 12 V 4.7 kohm low 3 V high 9 V ; inputs IN3 max 30 V pull-down 10 kohm ; ground GND }
            wire W1 22 AWG 3 m PS1:+ -> D1:A
            wire W2 22 AWG 3 m D1:K -> S1:1
            wire W3 22 AWG 20 m S1:2 -> DS1:X1
            wire W4 22 AWG 3 m S1:2 -> K1:A1
            wire W5 22 AWG 3 m DS1:X2 -> D2:A
            wire W6 22 AWG 3 m K1:A2 -> D2:A
            wire W7 22 AWG 3 m D2:K -> D3:A
            wire W8 22 AWG 3 m D3:K -> PS1:-
            wire W9 22 AWG 3 m D1:K -> S2:common
            wire W10 24 AWG 40 m S2:normal -> R1:1
            wire W11 24 AWG 40 m R1:2 -> K2:A1
            wire W12 24 AWG 40 m K2:A2 -> D2:A
            wire W13 22 AWG 3 m S2:reverse -> A1:IN3
            wire W14 22 AWG 3 m A1:GND -> PS1:-
            wire W15 22 AWG 3 m K2:11 -> A1:IN1
            wire W16 22 AWG 3 m K2:12 -> D2:A
            wire W17 22 AWG 3 m K1:13 -> A1:IN2
            wire W18 22 AWG 3 m K1:14 -> PS1:-
            wire W19 22 AWG 3 m PS1:+ -> DS2:X1
            wire W20 22 AWG 3 m DS2:X2 -> D3:A
            wire W21 22 AWG 3 m D4:K -> K1:A1
            wire W22 22 AWG 3 m D4:A -> K1:A2
            wire W23 22 AWG 3 m R2:1 -> D1:K
            wire W24 22 AWG 3 m R2:2 -> K2:14
            expect A1:IN1 low when LEVER reverse
            expect K2 energised when LEVER normal
            """,

        // A board that pulls its inputs higher than its supply gives, and one pole of two supplies that share neither end.
        ["lifted"] = """
            actuator KEY { off rest ; on }
            supply PS1 5 V limit 0.5 A
            supply PS2 12 V switched
            diode D1
            switch S1 make on KEY when on
            switch S2 make on KEY when on
            led DL1 2 V 10 mA
            resistor R1 150 ohm
            resistor R2 47 kohm
            relay K1 12 V 200 ohm suppressed { make ; break }
            board A1 { inputs IN1 max 13 V pull-up 12 V 1 kohm low 1 V high 4 V ; inputs IN2 max 13 V pull-up 12 V 1 kohm ; ground GND }
            net A PS1:+ D1:A S1:1
            net B D1:K R1:1 A1:IN1
            net C R1:2 DL1:A
            net D PS1:- DL1:K A1:GND K1:14 K1:21
            net E S1:2 A1:IN2 K1:22
            net F PS2:+ S2:1
            net G S2:2 K1:A1 R2:1
            net H K1:A2 PS2:-
            net I R2:2 K1:13
            expect A1:IN1 high
            """,

        // A mesh of contacts: nodes on which nothing hangs with two, three and four ways from them, a node on which a lamp hangs in their
        // midst, contacts side by side, one across a lamp, a rail that a way leads over.
        ["mesh"] = """
            actuator A { off rest ; on }
            actuator B { off rest ; on }
            actuator C { off rest ; on }
            actuator D { off rest ; half ; on }
            supply PS1 24 V limit 1 A
            switch S1 make on A when on
            switch S2 make on B when on
            switch S3 make on C when on
            switch S4 make on D when half
            switch S5 make on D when on
            switch S6 break on A when on
            switch S7 break on B when on
            switch S8 make on C when on
            switch S9 make on D when half on
            switch S10 make on A when on
            lamp DS1 24 V 40 mA
            lamp DS2 24 V 40 mA
            lamp DS3 24 V 40 mA
            board A1 { inputs IN1 max 30 V pull-down 10 kohm ; ground GND }
            net P PS1:+ S1:1 S2:1 S10:1
            net Q S1:2 S3:1 S4:1 S6:1
            net R S2:2 S3:2 S5:1
            net S S4:2 S5:2 S7:1 S8:1 S9:1
            net T S6:2 DS1:X1 S7:2
            net U S8:2 DS2:X1
            net V S9:2 A1:IN1
            net W S10:2 DS3:X1
            net M PS1:- DS1:X2 DS2:X2 A1:GND DS3:X2
            expect DS1 energised when A on and B on and C on
            expect DS2 released when C off
            """,

        // Everything too small: wires, fuses, contacts, supply, each told by the figure that a position shows.
        ["overloads"] = """
            limits { ambient 50 degC  insulation 80 degC  drop 0.5 V }
            actuator KEY { off rest ; half ; full }
            supply PS1 28 V adjustable 24..29 V limit 2 A source 0.1 ohm
            fuse F1 1.5 A
            fuse F2 10 A
            switch S1 make on KEY when half full rated 28 V 1 A
            switch S2 make on KEY when full rated 28 V 1 A
            lamp DS1 28 V 300 mA
            lamp DS2 28 V 50 mA
            motor M1 28 V 0.8 A operates 20 V
            solenoid L1 28 V 100 ohm suppressed
            resistor R1 20 ohm 10 W
            led DL1 2 V 20 mA
            led DL2 2 V 20 mA
            resistor R2 470 ohm 1 W
            resistor R3 10 kohm 0.25 W
            wire W1 28 AWG 3 m PS1:+ -> F1:1
            wire W2 28 AWG 1 m F1:2 -> S1:1
            wire W3 30 AWG 2 m S1:2 -> M1:1
            wire W4 30 AWG 2 m S1:2 -> DS1:X1
            wire W5 30 AWG 2 m S1:2 -> DS2:X1
            wire W6 30 AWG 2 m DS1:X2 -> DS2:X2
            wire W7 30 AWG 2 m DS2:X2 -> M1:2
            wire W8 30 AWG 2 m M1:2 -> PS1:-
            wire W9 28 AWG 1 m F1:2 -> S2:1
            wire W10 28 AWG 1 m S2:2 -> R1:1
            wire W11 28 AWG 1 m R1:2 -> F2:1
            wire W12 28 AWG 1 m F2:2 -> PS1:-
            wire W13 28 AWG 1 m S2:2 -> L1:A1
            wire W14 28 AWG 1 m L1:A2 -> PS1:-
            wire W15 28 AWG 1 m PS1:+ -> R2:1
            wire W16 28 AWG 1 m R2:2 -> DL1:A
            wire W17 28 AWG 1 m DL1:K -> PS1:-
            wire W18 28 AWG 1 m PS1:+ -> R3:1
            wire W19 28 AWG 1 m R3:2 -> DL2:A
            wire W20 28 AWG 1 m DL2:K -> PS1:-
            """,

        // Ways that part and meet again: rings of wires, wires side by side, a bridge of resistors, splices and strips, mated plugs,
        // dead ends, nets that no wire carries yet.
        ["rings"] = """
            actuator A { off rest ; on }
            actuator B { off rest ; on }
            supply PS1 24 V source 0.05 ohm
            terminals X1 { 1..6 ; jumper 5 6 }
            connector J1 { pins ; strip 4 pitch 5 mm }
            connector P1 { sockets ; mates J1 }
            splice SP1
            switch S1 make on A when on
            switch S2 make on B when on
            switch S3 make on A when on
            switch S4 make on B when on
            fuse F1 3 A
            lamp DS1 24 V 500 mA
            lamp DS2 24 V 100 mA
            lamp DS3 24 V 40 mA
            resistor R1 100 ohm
            resistor R2 200 ohm
            resistor R3 300 ohm
            resistor R4 150 ohm
            resistor R5 50 ohm
            relay K1 24 V 400 ohm operates 20 V suppressed { make }
            wire W1 22 AWG 2 m PS1:+ -> X1:1
            wire W2 22 AWG 3 m PS1:+ -> X1:2
            wire W3 22 AWG 1 m X1:1 -> X1:2
            wire W4 22 AWG 1 m X1:1 -> X1:3
            wire W5 22 AWG 4 m X1:1 -> X1:3
            wire W6 22 AWG 1 m X1:3 -> F1:1
            wire W7 22 AWG 1 m F1:2 -> S1:1
            wire W8 22 AWG 1 m S1:2 -> J1:1
            wire W9 22 AWG 1 m P1:1 -> DS1:X1
            wire W10 22 AWG 1 m DS1:X2 -> SP1:1
            wire W11 22 AWG 1 m SP1:1 -> X1:5
            wire W12 22 AWG 6 m X1:6 -> PS1:-
            wire W13 22 AWG 1 m X1:2 -> S2:1
            wire W14 22 AWG 1 m S2:2 -> R1:1
            wire W15 22 AWG 1 m R1:1 -> R2:1
            wire W16 22 AWG 1 m R1:2 -> R3:1
            wire W17 22 AWG 1 m R2:2 -> R4:1
            wire W18 22 AWG 1 m R1:2 -> R5:1
            wire W19 22 AWG 1 m R2:2 -> R5:2
            wire W20 22 AWG 1 m R3:2 -> X1:6
            wire W21 22 AWG 1 m R4:2 -> X1:6
            wire W22 22 AWG 1 m S3:1 -> X1:2
            wire W23 22 AWG 1 m S3:2 -> J1:2
            wire W24 22 AWG 1 m P1:2 -> DS2:X1
            wire W31 22 AWG 1 m DS2:X2 -> SP1:1
            wire W32 22 AWG 1 m S1:2 -> DS3:X1
            wire W33 22 AWG 1 m DS3:X2 -> X1:5
            wire W25 22 AWG 1 m S1:2 -> S4:1
            wire W26 22 AWG 1 m S4:2 -> S2:2
            wire W27 22 AWG 1 m K1:A1 -> S4:2
            wire W28 22 AWG 1 m K1:A2 -> SP1:1
            wire W29 22 AWG 1 m J1:3 -> X1:4
            wire W30 22 AWG 1 m P1:3 -> S4:2
            wire W34 22 AWG 1 m K1:13 -> X1:4
            wire W35 22 AWG 1 m K1:14 -> DS3:X1
            """,

        // Relays that hunt: one that opens its own feed, two that shut each other out, one that follows another, a lock that one of them
        // releases.
        ["relays"] = """
            actuator KEY { off rest ; on }
            actuator RUN { off rest ; on }
            actuator LEVER { normal rest ; reverse }
            supply PS1 24 V
            switch S1 make on KEY when on
            switch S2 make on RUN when on
            relay K1 24 V 800 ohm suppressed { changeover ; make }
            relay K2 24 V 800 ohm suppressed { changeover ; make }
            relay K3 24 V 800 ohm suppressed { changeover ; make }
            relay K4 24 V 800 ohm suppressed { make ; make }
            relay K5 24 V 800 ohm suppressed { make }
            lamp DS1 24 V 40 mA
            lamp DS2 24 V 40 mA
            net P PS1:+ S1:1 S2:1 K4:23 K2:23 K3:23
            net M PS1:- K1:A2 K2:A2 K3:A2 K4:A2 K5:A2 DS1:X2 DS2:X2
            net A S1:2 K1:11 K5:14
            net B K1:12 K1:A1
            net C S2:2 K3:11 K2:11
            net D K3:12 K2:A1
            net E K2:12 K3:A1
            net F K2:24 K4:A1
            net G K4:24 K5:A1
            net H K5:13 DS1:X1
            net J K3:24 DS2:X1
            lock LEVER at normal unless K5 energised
            """,

        // Wires for which sizes are chosen: metric, a cable, contacts that take some sizes only, one without a length, one too long.
        ["sizes"] = """
            limits { ambient 30 degC  insulation 90 degC  drop 5 % }
            actuator KEY { off rest ; on }
            connector J1 { pins ; strip 4 pitch 5 mm ; size 20 ; crimp }
            connector P1 { sockets ; mates J1 ; size 20 ; solder }
            supply PS1 24 V limit 5 A
            fuse F1 4 A
            fuse F2
            switch S1 make on KEY when on
            heater EH1 24 V 60 W
            lamp DS1 24 V 100 mA
            lamp DS2 24 V 100 mA
            motor M1 24 V 1 A
            wire W1 0.75 mm2 2 m PS1:+ -> F1:1
            wire W2 2 m F1:2 -> S1:1
            wire W3 4 m S1:2 -> J1:1
            wire W4 6 m P1:1 -> EH1:1
            wire W5 1.5 mm2 6 m EH1:2 -> PS1:-
            wire W6 S1:2 -> F2:1
            wire W7 20 m F2:2 -> DS1:X1
            wire W8 20 m DS1:X2 -> PS1:-
            wire W9 400 m S1:2 -> DS2:X1
            wire W10 0.5 mm2 400 m DS2:X2 -> PS1:-
            cable C1 10 m { core 1 M1:1 -> S1:2 ; core 2 1 mm2 M1:2 -> PS1:- ; core 3 ; core 4 }
            """,
    }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    /// <summary>The names, for theories.</summary>
    public static TheoryData<string> Names => [.. All.Keys];

    /// <summary>The panel of that name; it reads without errors.</summary>
    public static Panel Panel(string name)
    {
        var read = TestPanels.Read(All[name]);
        Assert.Empty(read.Diagnostics.Where(d => d.Severity == Severity.Error).Select(d => $"{name}: {d.Span}: {d.Message}"));
        return read.Panel;
    }

    /// <summary>What is analysed of the panel of that name.</summary>
    public static AnalysisContext Context(string name) => new(Panel(name));
}
