using Schematic.Tests.Language;
using Xunit;

namespace Schematic.Tests.Binding;

/// <summary>What is said about names and values.</summary>
public class BindingErrorTests
{
    private const string Unit = """
        connector J1 { pins ; strip 6 pitch 5.08 mm }
        actuator LEVER { normal rest ; check ; reverse }

        """;

    [Fact]
    public void An_unknown_name_proposes_the_nearest_of_the_kind_needed() => MarkedText.Gives(
        Unit + """
        switch S1 make on [[LEVR]] when reverse
        lamp LEVEL1 28 V 40 mA
        expect [[LEVEL2]] energised
        """,
        "unknown-name: An actuator named `LEVR` is not declared. -> Did you mean `LEVER`?",
        "unknown-name: A lamp, an LED, a relay or a solenoid named `LEVEL2` is not declared. -> Did you mean `LEVEL1`?");

    [Fact]
    public void A_name_in_other_case_is_unknown_and_the_help_says_why() => MarkedText.Gives(
        Unit + "switch S1 make on [[lever]] when reverse\nnet A [[j1]]:1 J1:2",
        "unknown-name: An actuator named `lever` is not declared. -> Did you mean `LEVER`? Capital and small letters differ.",
        "unknown-name: A part named `j1` is not declared. -> Did you mean `J1`? Capital and small letters differ.");

    [Fact]
    public void A_contact_letter_in_other_case_is_another_contact() => MarkedText.Gives(
        "connector J1 { pins ; strip 2 pitch 5 mm names A b }\nnet X J1:A [[J1:B]]",
        "unknown-contact: `J1` has no contact `B`. -> Did you mean `b`? Capital and small letters differ.");

    [Fact]
    public void A_range_past_the_end_is_one_finding() => MarkedText.Gives(
        Unit + "net A [[J1:4..20]]",
        "unknown-contact: `J1` has no contact `7`, and 13 more of this range are missing. -> `J1` has: 1 2 3 4 5 6.");

    [Fact]
    public void Positions_are_checked_wherever_they_stand() => MarkedText.Gives(
        Unit + """
        pole S1 changeover on LEVER { common ; [[norml]] ; reverse }
        switch S2 make on LEVER when [[REVERSE]]
        lamp DS1 28 V 40 mA
        lock LEVER at [[nowhere]] unless DS1 energised
        expect DS1 energised when LEVER normal [[chekc]]
        expect DS1 energised when DS1 [[lit]]
        supply PS1 24 V
        expect DS1 energised when PS1 [[energised]]
        """,
        "unknown-position: `LEVER` has no position `norml`. -> Did you mean `normal`?",
        "unknown-position: `LEVER` has no position `REVERSE`. -> Did you mean `reverse`? Capital and small letters differ.",
        "unknown-position: `LEVER` has no position `nowhere`. -> It has: normal, check, reverse.",
        "unknown-position: `LEVER` has no position `chekc`. -> Did you mean `check`?",
        "unknown-position: `DS1` is a lamp: it is energised or released. -> Write one of them: DS1 energised.",
        "unknown-position: `PS1` is a supply: it is on or off. -> Write one of them: PS1 on.");

    [Fact]
    public void A_name_of_another_kind_is_told_apart_from_an_unknown_one() => MarkedText.Gives(
        Unit + """
        net A [[LEVER]]:normal J1:1
        switch S1 make on [[J1]] when reverse
        connector P1 { sockets ; mates [[S1]] ; strip 6 pitch 5 mm }
        expect [[J1:1]] low
        """,
        "wrong-kind: `LEVER` is an actuator; a part is needed here.",
        "wrong-kind: `J1` is a connector; an actuator is needed here.",
        "wrong-kind: `S1` is a switch; a connector is needed here.",
        "wrong-kind: `J1:1` is not an input; an input of a board is needed here.");

    [Fact]
    public void Designators_are_unique_and_nets_have_names_of_their_own() => MarkedText.Gives(
        Unit + """
        fuse F1 1 A
        resistor [[F1]] 10 ohm
        actuator [[J1]] { a rest ; b }
        net J1 J1:1 F1:1
        net [[J1]] J1:2 F1:2
        actuator B { a rest ; [[a]] ; b }
        terminals X1 { 1..3 ; [[3]] }
        board A1 { inputs IN1..IN2 [[IN2]] ; ground GND }
        cable C1 { core 1 J1:3 -> X1:1 ; core [[1]] J1:4 -> X1:2 }
        """,
        "duplicate-name: The name `F1` is declared twice.",
        "duplicate-name: The name `J1` is declared twice.",
        "duplicate-name: The name `J1` is declared twice.",
        "duplicate-name: The name `a` is declared twice.",
        "duplicate-name: The name `3` is declared twice.",
        "duplicate-name: The name `IN2` is declared twice.",
        "duplicate-name: The name `C1-1` is declared twice.");

    [Fact]
    public void Units_say_what_was_found_and_what_is_needed() => MarkedText.Gives(
        """
        lamp DS1 28 V [[40]]
        lamp DS2 [[28 volts]] 40 mA
        lamp DS3 28 V [[40 MA]]
        resistor R1 [[10 k]]
        supply PS1 24 V limit [[3 V]] adjustable [[22..29 mA]]
        terminals X1 { 1..4 }
        wire W1 [[22 V]] black X1:1 -> X1:2
        wire W2 22 AWG black [[450]] X1:3 -> X1:4
        limits { drop [[1 A]]  ambient [[30]] }
        """,
        "wrong-unit: 40 has no unit; a voltage, a current, a power or a resistance is expected here.",
        "wrong-unit: 28 volts has an unknown unit, `volts`; a voltage, a current, a power or a resistance is expected here. -> Did you mean 28 V?",
        "wrong-unit: 40 MA has an unknown unit, `MA`; a voltage, a current, a power or a resistance is expected here. -> Did you mean 40 mA?",
        "wrong-unit: 10 k has an unknown unit, `k`; a resistance or a power is expected here. -> Did you mean 10 kohm?",
        "wrong-unit: 3 V is a voltage; a current is expected here.",
        "wrong-unit: 22..29 mA is a current; a voltage is expected here.",
        "wrong-unit: 22 V is a voltage; a gauge or a length is expected here.",
        "wrong-unit: 450 has no unit; a gauge or a length is expected here.",
        "wrong-unit: 1 A is a current; a voltage or a percentage is expected here.",
        "wrong-unit: 30 has no unit; a temperature, such as 30 degC, is expected here.");

    [Fact]
    public void Values_out_of_range_say_what_is_possible() => MarkedText.Gives(
        """
        build [[0]]
        lamp DS1 [[0 V]] 40 mA
        lamp DS2 28 V [[-40 mA]]
        supply PS1 [[30 V]] adjustable 22..29 V
        supply PS2 24 V adjustable [[29..22 V]]
        terminals X1 { 1..4 ; wires [[2.5]] }
        wire W1 [[50 AWG]] black X1:1 -> X1:2
        wire W2 [[22.5 AWG]] black X1:3 -> X1:4
        net A X1:[[4..1]]
        net B X1:[[A..D]]
        place X1 left sheet [[0]]
        """,
        "out-of-range: 0 is out of range for `build`. -> Give a whole number from 1 to 100000.",
        "out-of-range: 0 V is out of range. -> Give a value above zero.",
        "out-of-range: -40 mA is out of range. -> Give a value above zero.",
        "out-of-range: The supply's voltage lies outside its adjustable range.",
        "out-of-range: The range runs backwards.",
        "out-of-range: 2.5 is out of range for `wires`. -> Give a whole number from 1 to 100.",
        "out-of-range: There is no gauge 50 AWG.",
        "out-of-range: There is no gauge 22.5 AWG.",
        "out-of-range: The range 4..1 runs backwards. -> Write 1..4, or list the names in the order meant.",
        "out-of-range: The range A..D cannot be counted.",
        "out-of-range: 0 is out of range for `sheet`.");

    [Fact]
    public void Lists_that_go_together_have_one_length() => MarkedText.Gives(
        Unit + """
        poles S1..S3 changeover on LEVER { common J1:1 2 3 ; [[normal J1:4 5]] ; reverse }
        pole [[S4]] changeover on LEVER { common ; normal }
        switch S5 make on LEVER when reverse { [[J1:1]] }
        lamp DS1 28 V 40 mA { [[J1:1]] J1:2 J1:3 }
        relay K1 24 V 30 mA { coil J1:4 J1:5 ; changeover [[J1:6]] J1:1 }
        """,
        "count-mismatch: This row names 2 contacts for 3 poles.",
        "count-mismatch: A changeover pole has two throws; `S4` has 1.",
        "count-mismatch: A contact pair has two contacts; here is 1.",
        "count-mismatch: 3 contacts are given for 2 terminals. -> Give one contact for each of X1, X2, in this order.",
        "count-mismatch: 2 contacts are given for 3 terminals. -> Give one contact for each of 11, 12, 14, in this order.");

    [Fact]
    public void What_is_missing_is_asked_for_once_and_not_where_it_could_not_be_read() => MarkedText.Gives(
        """
        supply [[PS1]] { + - }
        lamp DS2 28 V [[40 mX]]
        connector [[J1]] { pins }
        actuator [[A]] { }
        net [[N]]
        board [[B]] { ground GND }
        terminals [[X1]] { }
        """,
        "missing-value: `PS1` has no rated voltage.",
        "wrong-unit: 40 mX has an unknown unit, `mX`; a voltage, a current, a power or a resistance is expected here.",
        "missing-value: The connector has no insert.",
        "missing-value: `A` has no positions.",
        "missing-value: The net `N` has no members.",
        "missing-value: `B` has no inputs.",
        "missing-value: `X1` has no terminals.");

    [Fact]
    public void Words_that_exclude_each_other_are_shown_together() => MarkedText.Gives(
        """
        title "a"
        [[title]] "b"
        connector J1 { pins [[sockets]] ; strip 3 pitch 5 mm [[spiral]] 7 }
        actuator LEVER { a rest ; b [[rest]] ; c springs-to [[c]] }
        actuator GRIP { a rest ; b springs-to [[c]] ; c springs-to b ; d springs-to c }
        solenoid L1 28 V 0.7 A [[40 ohm]]
        lamp DS1 28 V [[24 V]] 40 mA red [[green]]
        """,
        "stated-twice: `title` is stated twice.",
        "contradiction: `sockets` contradicts `pins`.",
        "contradiction: `spiral` contradicts `strip`.",
        "stated-twice: The rest position is stated twice.",
        "contradiction: `c` springs to itself.",
        "contradiction: `b` springs away and, by way of others, back to itself.",
        "contradiction: Voltage, current and resistance of the coil are all given.",
        "stated-twice: A voltage is stated twice.",
        "stated-twice: The colour is stated twice.");

    [Fact]
    public void An_insert_that_cannot_be_is_reported_and_its_contacts_are_not_missed_as_well() => MarkedText.Gives(
        """
        connector J1 { pins ; [[spiral 37]] rings 1 6 12 17 from centre clockwise on front of pins ; spare 30..37 }
        connector P1 { sockets ; mates J1 }
        net A J1:5 P1:99
        """,
        "insert-geometry: The rings 1 6 12 17 add up to 36, not to 37.");

    [Fact]
    public void Words_that_shape_an_insert_need_one() => MarkedText.Gives(
        """
        connector J1 { pins ; strip 3 pitch 5 mm }
        connector P1 { sockets ; mates J1 ; [[rings]] 1 6 }
        """,
        "missing-value: `rings` says nothing without the insert it belongs to.");

    [Fact]
    public void A_letter_that_is_misread_is_a_warning() => MarkedText.Gives(
        "connector J1 { pins ; [[strip 3]] pitch 5 mm names H I J }",
        "unclear-letters: Contact letter I is left out of the published letter sequence.");
}
