using System.Buffers;
using System.Collections.Frozen;
using System.Text.RegularExpressions;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>
/// Slips that a hand makes which is used to other ways of writing: a decimal comma, an inch mark, curly quotes, <c>//</c>,
/// <c>AWG22</c>. Each is told by itself and in words, in the place of the several findings that the grammar would make of it;
/// the statement then counts as unread and still declares its name.
/// </summary>
internal static partial class Slips
{
    private static readonly SearchValues<char> Curly = SearchValues.Create("“”„‟«»‘’");

    /// <summary>Words for kinds of parts that the language calls otherwise, and what to write.</summary>
    private static readonly FrozenDictionary<string, string> OtherWords = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["contactor"] = "A contactor is written as a relay: relay K1 24 V 30 mA { coil X1:1 X1:2 ; make }.",
        ["micro"] = "Write microswitch: microswitch S1 changeover on CAM when lifted { COM J1:1 ; NO J1:2 ; NC J1:3 }.",
        ["encoder"] = "Write coded: coded S1 on KNOB gray { common ; A \"0110\" ; B \"0011\" }.",
        ["thumbwheel"] = "Write coded, with a pattern for each output: coded S1 on WHEEL { common ; 1 \"0101\" ; 2 \"0011\" }.",
        ["timer"] = "A timer is written as a relay with a delay: relay K1 24 V 30 mA on-delay 5 s { coil X1:1 X1:2 ; delayed-make }.",
        ["coil"] = "A coil that moves contacts is a relay, one that moves or locks something else a solenoid.",
        ["varistor"] = "Write suppressor, with the volts that it stands: suppressor RV1 39 V.",
        ["mov"] = "Write suppressor, with the volts that it stands: suppressor RV1 39 V.",
        ["pot"] = "Write potentiometer.",
        ["trimmer"] = "Write potentiometer.",
        ["ntc"] = "Write thermistor: thermistor RT1 10 kohm beta 3950 K over -20..60 degC.",
        ["ptc"] = "Write thermistor, with the range of its ohms: thermistor RT1 80..1500 ohm.",
        ["ldr"] = "Write photoresistor: photoresistor RL1 dark 1 Mohm lit 5 kohm.",
        ["bridge"] = "Write rectifier.",
        ["photocoupler"] = "Write optocoupler.",
        ["bulb"] = "Write lamp.",
        ["light"] = "Write lamp, or led.",
        ["indicator"] = "Write lamp, or led.",
        ["rotary"] = "Write the knob and its poles: actuator KNOB { 1 rest ; 2 ; 3 }, then poles S1 rotary on KNOB { common J1:1 ; 1 J1:2 ; 2 J1:3 ; 3 J1:4 }.",
        ["selector"] = "Write the knob and its poles: actuator KNOB { 1 rest ; 2 ; 3 }, then poles S1 rotary on KNOB { common J1:1 ; 1 J1:2 ; 2 J1:3 ; 3 J1:4 }.",
        ["toggle"] = "Write what is moved and its contact: actuator B1 { off rest ; on }, then switch S1 make on B1.",
        ["keyswitch"] = "Write what is moved and its contact: actuator KEY { out rest ; in }, then switch S1 make on KEY.",
        ["thermostat"] = "Write what moves its contact, and the contact: actuator HEAT { cold rest ; warm }, then switch S1 break on HEAT.",
        ["sensor"] = "A sensor with a contact is a switch on what moves it, one of resistance a thermistor, photoresistor or rheostat, any other a device.",
        ["horn"] = "Write buzzer: buzzer HA1 24 V 300 mA.",
        ["gong"] = "Write bell: bell HA1 24 V 500 mA.",
        ["speaker"] = "Write resistor, with its ohms: resistor R1 8 ohm. On direct current that is what it is.",
        ["choke"] = "Write device, with its ohms: device L1 \"choke\" { terminals 1 2 ; winding 1 2 12 ohm }.",
        ["inductor"] = "Write device, with its ohms: device L1 \"choke\" { terminals 1 2 ; winding 1 2 12 ohm }.",
        ["shunt"] = "Write resistor, with its ohms: resistor R1 0.05 ohm.",
        ["voltmeter"] = "Write meter, with two of volts, amperes and ohms at full scale: meter P1 30 V 1 mA.",
        ["ammeter"] = "Write meter, with two of volts, amperes and ohms at full scale: meter P1 5 A 60 mV.",
        ["gauge"] = "Write meter for a movement with a pointer: meter P1 1 mA 100 ohm. The gauge of a wire stands in its statement.",
        ["zener"] = "Write suppressor, with the volts that it stands, or device with a diode in it.",
        ["mosfet"] = "Write transistor, or device for one that is not an open output.",
        ["generator"] = "Write supply: supply PS1 24 V { + - }.",
        ["dynamo"] = "Write supply: supply PS1 24 V { + - }.",
        ["charger"] = "Write supply, with its limit: supply PS1 24 V limit 1 A { + - }.",
        ["converter"] = "Write device for a converter; the side that feeds is also a supply: supply PS2 5 V limit 1 A { + - }.",
        ["regulator"] = "Write device for a regulator; the side that feeds is also a supply: supply PS2 5 V limit 1 A { + - }.",
        ["ground"] = "A ground is a net of its own name: net GND PS1:- A1:GND.",
        ["earth"] = "An earth is a net of its own name: net PE J1:1 X1:1.",
        ["interlock"] = "Write lock: lock LEVER at normal unless L1 energised.",
        ["battery"] = "Write supply: supply PS1 24 V { + - }.",
        ["psu"] = "Write supply: supply PS1 24 V { + - }.",
        ["plug"] = "Write connector, with pins or sockets in its block.",
        ["socket"] = "Write connector, with pins or sockets in its block.",
        ["receptacle"] = "Write connector, with pins or sockets in its block.",
        ["header"] = "Write connector, with the insert in its block: grid 5 by 2.",
        ["terminal"] = "Write terminals: terminals X1 { 1..12 }.",
        ["strip"] = "Write terminals: terminals X1 { 1..12 }.",
        ["button"] = "Write what is moved and its contact: actuator B1 { out rest ; in springs-to out }, then switch S1 make on B1.",
        ["pushbutton"] = "Write what is moved and its contact: actuator B1 { out rest ; in springs-to out }, then switch S1 make on B1.",
        ["lever"] = "Write actuator: actuator LEVER { normal rest ; reverse }.",
        ["knob"] = "Write actuator: actuator KNOB { 1 rest ; 2 ; 3 }.",
        ["core"] = "A core stands in the block of its cable: cable C1 2 m { core 1 brown X1:1 -> X2:1 }.",
        ["jumper"] = "A jumper stands in the block of its strip: terminals X1 { 1..3 ; jumper 1 2 }.",
        ["circuit-breaker"] = "Write breaker.",
        ["cb"] = "Write breaker.",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>Every word for a kind of part that the language calls otherwise.</summary>
    public static IEnumerable<string> WordsOfOthers => OtherWords.Keys;

    /// <summary>What to write in the place of a word that the language does not know as a kind; null when nothing is known of it.</summary>
    public static string? OtherWordFor(string word) => OtherWords.GetValueOrDefault(word.ToLowerInvariant());

    /// <summary>Reports every slip in a statement and its block; false when there is none.</summary>
    public static bool Report(SourceText source, RawStatement statement, string keyword, SyntaxReporter report)
    {
        var found = InHead(source, statement, keyword, report);
        if (statement.Block is null) return found;
        foreach (var line in statement.Block) found |= Report(source, line, keyword, report);
        return found;
    }

    private static bool InHead(SourceText source, RawStatement statement, string keyword, SyntaxReporter report)
    {
        var head = source.Slice(statement.Head);
        if (!MayHoldSlips(head, keyword)) return false;
        var text = WithoutStrings(head);
        var before = report.Count;
        void Each(Regex pattern, Action<Match, TextSpan> tell)
        {
            foreach (Match match in pattern.Matches(text))
            {
                var group = match.Groups["slip"];
                tell(match, new TextSpan(statement.Start + group.Index, group.Length));
            }
        }

        if (Slashes().Match(text) is { Success: true } slashes)
        {
            report.Slip(new TextSpan(statement.Start + slashes.Groups["slip"].Index, 2), "A comment does not begin so here.", "A comment begins with #.", slashes.Value.TrimStart() == "//" ? "#" : null);
            return true;
        }

        Each(CurlyQuotes(), (m, span) => report.Slip(
            span, "This is no quote of the language.", "Put strings in straight quotes: \"text\".", Straight(m.Groups["slip"].Value)));
        if (keyword != "terminals") Each(keyword == "connector" ? CommaLength() : CommaQuantity(), (m, span) => report.Slip(
            span, "A number has a decimal point, not a comma.", $"Write {m.Groups["whole"]}.{m.Groups["part"]} {m.Groups["unit"]}.",
            $"{m.Groups["whole"]}.{m.Groups["part"]} {m.Groups["unit"]}"));
        if (keyword == "wire" && Unnamed().Match(text) is { Success: true } unnamed)
        {
            var word = unnamed.Groups["slip"];
            report.Slip(
                new TextSpan(statement.Start + word.Index, word.Length), "The wire has no name.",
                "Put its name or number first: wire W1 22 AWG black 450 mm PS1:- -> P1:4.");
            return true;
        }

        if (keyword is "wire" or "cable")
        {
            Each(GaugeFirst(), (m, span) => report.Slip(span, "The unit of a gauge stands after its number.", $"Write {m.Groups["number"]} AWG.", $"{m.Groups["number"]} AWG"));
        }

        if (keyword is "wire" or "cable" && text.Contains("->", StringComparison.Ordinal))
        {
            Each(SplitTerminal(), (m, span) => report.Slip(
                span, $"`{m.Groups["slip"]}` is no terminal.", $"Join part and contact by a colon: {m.Groups["part"]}:{m.Groups["contact"]}.",
                $"{m.Groups["part"]}:{m.Groups["contact"]}"));
        }

        if (keyword == "poles")
        {
            Each(DashRange(), (m, span) => report.Slip(
                span, $"`{m.Groups["slip"]}` is one name, not a range.", $"A range has two dots: {m.Groups["from"]}..{m.Groups["letters"]}{m.Groups["to"]}.",
                $"{m.Groups["from"]}..{m.Groups["letters"]}{m.Groups["to"]}"));
        }

        return report.Count > before;
    }

    /// <summary>A text in straight quotes; null where its end is not certain.</summary>
    private static string? Straight(string quoted) =>
        quoted.Length > 1 && Curly.Contains(quoted[^1]) ? $"\"{quoted[1..^1].Replace("\\", "\\\\", StringComparison.Ordinal)}\"" : null;

    /// <summary>A quick look, so that files of a hundred thousand sound lines are read as fast as ever.</summary>
    private static bool MayHoldSlips(ReadOnlySpan<char> head, string keyword) =>
        head.ContainsAny(Curly)
        || head.Contains(',')
        || head.Contains("//", StringComparison.Ordinal) || head.Contains("/*", StringComparison.Ordinal)
        || (keyword is "wire" or "cable" && HasWireSlip(head))
        || keyword == "poles";

    private static bool HasWireSlip(ReadOnlySpan<char> head) =>
        GaugeFirst().IsMatch(head) || Unnamed().IsMatch(head)
        || (head.Contains("->", StringComparison.Ordinal) && SplitTerminal().IsMatch(head));

    /// <summary>The text with strings blanked out, of the same length.</summary>
    private static string WithoutStrings(ReadOnlySpan<char> head)
    {
        var text = head.ToArray();
        for (var i = 0; i < text.Length;)
        {
            var length = Characters.ScanString(head[i..]);
            for (var j = i; j < i + length; j++) text[j] = '"';
            i += Math.Max(1, length);
        }

        return new string(text);
    }

    [GeneratedRegex(@"(?:^|\s)(?<slip>//|/\*)")]
    private static partial Regex Slashes();

    [GeneratedRegex("(?<slip>[“”„‟«»‘’][^“”„‟«»‘’\"]*[“”„‟«»‘’]?)")]
    private static partial Regex CurlyQuotes();

    [GeneratedRegex(@"(?<![\w:,.+-])(?<slip>(?<whole>\d+),(?<part>\d+)\s*(?<unit>mV|kV|V|mA|uA|µA|A|[mkM]?(?:ohm|Ω)|mm2|mm²|mm|cm|m|in|ft|[mk]?W|degC|°C|%)(?![\w:]))")]
    private static partial Regex CommaQuantity();

    [GeneratedRegex(@"(?<![\w:,.+-])(?<slip>(?<whole>\d+),(?<part>\d+)\s*(?<unit>mm|cm)(?![\w:]))")]
    private static partial Regex CommaLength();

    [GeneratedRegex(@"(?:^wire\s+\S+\s+|(?<!(?:^|\s)[\d/.]+\s*)\b)(?<slip>AWG\s*(?<number>\d+(?:/0)?))(?![\w/])")]
    private static partial Regex GaugeFirst();

    [GeneratedRegex(@"^(?<slip>wire)\s+(?:(?:\d+(?:\.\d+|/0)?)\s*(?:AWG|mm2|mm²)\s|[A-Za-z_][\w-]*:)")]
    private static partial Regex Unnamed();

    [GeneratedRegex(@"(?<![\w:.-])(?<slip>(?<part>(?!AWG\b|mm\b|cm\b|in\b|ft\b|m\b|wire\b)[A-Za-z_]\w*)(?:\s+|-)(?<contact>\w*\d\w*|[+-]))(?=\s*(?:->|$))")]
    private static partial Regex SplitTerminal();

    [GeneratedRegex(@"^poles\s+(?<slip>(?<from>(?<letters>[A-Za-z]+)\d+)-[A-Za-z]*(?<to>\d+))(?=\s)")]
    private static partial Regex DashRange();
}
