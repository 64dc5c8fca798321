using System.Collections.Immutable;
using System.Globalization;
using Schematic.Binding;
using Schematic.Language;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Editor;

/// <summary>
/// Proposes what may be written at a place: words as the grammar expects them, designators, free contacts first, positions, units,
/// colours, files.
/// </summary>
public sealed class Completer
{
    private static readonly ImmutableArray<string> WireUnits = ["AWG", "mm2", "mm", "cm", "m", "in", "ft"];
    private static readonly ImmutableArray<string> OtherUnits =
        ["V", "mV", "kV", "A", "mA", "uA", "ohm", "kohm", "Mohm", "W", "mW", "kW", "uF", "nF", "pF", "mm", "in", "degC", "%"];

    /// <summary>Words after which a condition goes on.</summary>
    private static readonly ImmutableHashSet<string> Joining = ["when", "unless", "and", "or"];

    private readonly EditedPanel _panel;
    private readonly WritingPlace _place;
    private readonly ExpectedWords _expected;
    private readonly ImmutableArray<Proposal>.Builder _found = ImmutableArray.CreateBuilder<Proposal>();

    private Completer(EditedPanel panel, WritingPlace place)
    {
        _panel = panel;
        _place = place;
        _expected = place.Keyword.Length == 0 ? new ExpectedWords([], []) : ExpectedWords.After(place.Statement);
    }

    private string LastWord => _place.Words.IsEmpty ? "" : _place.Words[^1];

    private Panel Panel => _panel.Loaded.Panel;

    /// <summary>The proposals at an offset of the panel's own text, the likeliest first; none in comments and in most strings.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="offset">The place.</param>
    /// <param name="filesBeside">Names of the panel and readings files in the folder and below, for <c>use</c> and <c>readings</c>.</param>
    public static ImmutableArray<Proposal> At(EditedPanel panel, int offset, IEnumerable<string>? filesBeside = null)
    {
        if (WritingPlace.At(panel.Source, offset) is not { } place) return [];
        var completer = new Completer(panel, place);
        if (place.String is { } begun) completer.Files(offset - begun.Length, begun.Length, filesBeside ?? []);
        else completer.Words();
        return [.. completer._found.DistinctBy(p => (p.Word, p.Replaces)).OrderBy(p => p.Rank)];
    }

    private void Files(int start, int length, IEnumerable<string> names)
    {
        var ending = LastWord switch
        {
            "use" => ".panel",
            "readings" => ".readings",
            _ => null,
        };
        if (ending is null) return;
        foreach (var name in names.Where(n => n.EndsWith(ending, StringComparison.Ordinal)).Order(StringComparer.Ordinal))
            _found.Add(new Proposal(name, ProposalKind.File, "", new TextSpan(start, length)));
    }

    private void Words()
    {
        if (AfterColon() || AfterDots() || RightAfterNumber()) return;
        if (_place.Words.IsEmpty && !_place.IsInBlock)
        {
            foreach (var word in PanelParser.StatementKeywords) Add(word, ProposalKind.Keyword, SummaryOf(word), 0);
            return;
        }

        if (States()) return;
        if (IsNumber(LastWord)) Units(_place.Begun.Length, _place.Start);
        Carried();
        Names();
        foreach (var word in _expected.Keywords) Add(word, ProposalKind.Keyword, SummaryOf(word), 3);
        if (_expected.Kinds.Any(k => k is "a colour" || k.StartsWith("colours", StringComparison.Ordinal)))
        {
            foreach (var colour in Colours.Names.Where(c => c != "gray")) Add(colour, ProposalKind.Colour, Colours.Find(colour)!.Code, 4);
        }
    }

    /// <summary>Behind <c>J1:</c> stand the contacts of J1.</summary>
    private bool AfterColon()
    {
        var colon = _place.Begun.LastIndexOf(':');
        if (colon <= 0) return false;
        var contact = _place.Begun[(colon + 1)..];
        var dots = contact.LastIndexOf("..", StringComparison.Ordinal);
        var part = PartNamed(_place.Begun[..colon].Split(',')[^1]);
        Contacts(part, dots < 0 ? contact : contact[(dots + 2)..]);
        return true;
    }

    /// <summary>Behind <c>J1:5 7..</c> too.</summary>
    private bool AfterDots()
    {
        var dots = _place.Begun.LastIndexOf("..", StringComparison.Ordinal);
        if (dots <= 0 || PartCarried() is not { } part) return false;
        Contacts(part, _place.Begun[(dots + 2)..]);
        return true;
    }

    /// <summary><c>28m</c>: a unit is being written.</summary>
    private bool RightAfterNumber()
    {
        var length = Characters.ScanNumber(_place.Begun);
        var isUnit = length > 0 && _place.Begun[length..].All(c => char.IsLetter(c) || c is '%' or '°');
        if (!isUnit || PartCarried() is not null) return false;
        if (length == _place.Begun.Length && _place.Words is [] or [_]) return false;
        Units(_place.Begun.Length - length, _place.Start + length);
        return true;
    }

    private void Units(int length, int start)
    {
        var units = _place.Keyword is "wire" or "cable" ? WireUnits : OtherUnits;
        for (var i = 0; i < units.Length; i++)
            _found.Add(new Proposal(units[i], ProposalKind.Unit, "", new TextSpan(start, length)) { Rank = 1 });
    }

    /// <summary>Positions of the actuator that is spoken of, or the two states of a load or a supply.</summary>
    private bool States()
    {
        if (_place.Keyword is "actuator" && _place.IsInBlock)
        {
            if (LastWord != "springs-to") return false;
            PositionsOf(Panel.Actuators.FirstOrDefault(a => a.Name == WordOf(_place.Statement, 1)));
            return true;
        }

        if (_place.Keyword is "switch" or "pole" or "poles" && (LastWord == "when" || _place.Words.Contains("when") || (_place.IsInBlock && _place.Words.IsEmpty)))
        {
            var words = _place.Statement.Split([' ', '\t', '\n', '\r', '{'], StringSplitOptions.RemoveEmptyEntries);
            var on = Array.IndexOf(words, "on");
            if (on < 0 || on + 1 >= words.Length || ActuatorNamed(words[on + 1].Split("..")[0]) is not { } actuator) return false;
            PositionsOf(actuator);
            if (_place.IsInBlock) Add("common", ProposalKind.Keyword, SummaryOf("common"), 0);
            return _place.IsInBlock || LastWord == "when";
        }

        if (_place.Keyword == "lock" && _place.Words.Length > 2 && !_place.Words.Contains("unless"))
        {
            PositionsOf(ActuatorNamed(_place.Words[1]));
            Add("unless", ProposalKind.Keyword, "", 3);
            return true;
        }

        return InCondition();
    }

    private bool InCondition()
    {
        var begin = -1;
        for (var i = 0; i < _place.Words.Length; i++)
        {
            if (Joining.Contains(_place.Words[i])) begin = i;
        }

        if (begin < 0) return false;
        if (begin == _place.Words.Length - 1)
        {
            foreach (var actuator in Panel.Actuators) Add(actuator.Name, ProposalKind.Name, actuator.Description, 0);
            foreach (var part in Panel.Parts.Where(p => p.IsLoad || p is Supply)) Add(part.Designator, ProposalKind.Name, part.Description, 1);
            return true;
        }

        var subject = _place.Words[begin + 1];
        if (ActuatorNamed(subject) is { } subjectActuator) PositionsOf(subjectActuator);
        else if (Panel.FindPart(subject) is { } load && begin == _place.Words.Length - 2)
            Each(load is Supply ? ["on", "off"] : ["energised", "released"], ProposalKind.State);
        if (begin < _place.Words.Length - 2) Each(["and", "or"], ProposalKind.Keyword);
        return true;
    }

    /// <summary>More contacts of the part that was named last: <c>J1:4 7 10</c>, or of the connector in whose block they stand.</summary>
    private void Carried()
    {
        if (PartCarried() is { } carried)
        {
            Contacts(carried, _place.Begun);
            return;
        }

        var isOwn = _place.IsInBlock && _expected.Kinds.Any(k => k.Contains("contact name", StringComparison.Ordinal));
        if (isOwn && _place.Words.Length > 0 && _place.Words[0] != "mates") Contacts(Panel.FindPart(WordOf(_place.Statement, 1)), _place.Begun);
    }

    private void Names()
    {
        var kinds = _expected.Kinds;
        if (_place.Words.Length == 1 && !_place.IsInBlock && kinds.Contains("a name") && FreeDesignator() is { } free)
        {
            Add(free, ProposalKind.Name, "the next that is free", 0);
            return;
        }

        if (LastWord == "mates") Each(Panel.Parts.OfType<Connector>().Select(c => c.Designator), ProposalKind.Name);
        else if (LastWord == "on" || _place.Keyword == "lock") Each(Panel.Actuators.Select(a => a.Name), ProposalKind.Name);
        else if (_place.Keyword is "place" or "alternative" && _place.Words.Length == 1) Each(Panel.Parts.Select(p => p.Designator), ProposalKind.Name);
        else if (_place.Keyword == "expect" && _place.Words.Length == 1) Each(Panel.Parts.Where(p => p.IsLoad).Select(p => p.Designator), ProposalKind.Name);

        var wantsTerminal = kinds.Any(k => k.StartsWith("a terminal such as", StringComparison.Ordinal))
            || (_place.Keyword is "wire" or "cable" && _place.Words.Length > 1)
            || (_place.Keyword is "net" && _place.Words.Length > 1) || (_place.Keyword is "expect" or "never" && _place.Words.Length > 0);
        if (!wantsTerminal) return;
        if (_place.Keyword is "wire" or "cable" && !_place.Words.Contains("->") && LastWord.Contains(':')) Add("->", ProposalKind.Keyword, "", 0);
        foreach (var part in Panel.Parts.Where(p => !p.Terminals.IsEmpty)) Add($"{part.Designator}:", ProposalKind.Name, part.Description, 2);
    }

    private void PositionsOf(Actuator? actuator)
    {
        foreach (var position in actuator?.Positions ?? [])
            Add(position.Name, ProposalKind.State, position.SpringsTo is { } target ? $"springs to {target}" : position.IsRest ? "rest" : "", 0);
    }

    private void Contacts(Part? part, string begun)
    {
        if (part is null) return;
        var span = new TextSpan(_place.Start + _place.Begun.Length - begun.Length, begun.Length);
        foreach (var terminal in part.Terminals)
        {
            var what = ContactWords.WhatIsOn(_panel.Context, part.At(terminal.Name));
            _found.Add(new Proposal(terminal.Name, ProposalKind.Contact, what.Length == 0 ? "free" : what, span) { Rank = what.Length == 0 ? 0 : 1 });
        }
    }

    /// <summary>The part that a bare contact here would belong to: the last that was named in the same list.</summary>
    private Part? PartCarried()
    {
        for (var i = _place.Words.Length - 1; i >= 0; i--)
        {
            var word = _place.Words[i];
            var colon = word.IndexOf(':', StringComparison.Ordinal);
            if (colon > 0) return _place.Keyword is "wire" or "expect" ? null : PartNamed(word[..colon]);
            if (word == "->" || Characters.ScanContact(word) == 0) return null;
        }

        return null;
    }

    private Part? PartNamed(string name) => Panel.FindPart(name);

    private Actuator? ActuatorNamed(string name) => Panel.Actuators.FirstOrDefault(a => a.Name == name);

    /// <summary>The designator after the last one of its kind: <c>DS3</c> after <c>DS2</c>; null where none was given yet.</summary>
    private string? FreeDesignator()
    {
        var given = _panel.Syntax.Statements.SelectMany(s => s.Accept(GivenNames.Instance), (s, n) => (Keyword: s.Keyword.Text, Name: (n.Last ?? n.First).Text)).ToList();
        var last = given.FindLast(g => g.Keyword == _place.Keyword).Name;
        if (last is null) return null;
        var letters = last.TrimEnd([.. "0123456789"]);
        var taken = given.Select(g => g.Name).ToHashSet(StringComparer.Ordinal);
        if (!int.TryParse(last.AsSpan(letters.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var number)) return null;
        string next;
        do next = letters + (++number).ToString(CultureInfo.InvariantCulture);
        while (taken.Contains(next));
        return next;
    }

    private static bool IsNumber(string word) => word.Length > 0 && Characters.ScanNumber(word) == word.Length;

    private static string WordOf(string statement, int index)
    {
        var words = statement.Split([' ', '\t', '\n', '\r', '{'], StringSplitOptions.RemoveEmptyEntries);
        return index < words.Length ? words[index] : "";
    }

    private static string SummaryOf(string word) => WordCatalogue.Find(word)?.Summary.Replace("`", "", StringComparison.Ordinal) ?? "";

    private void Each(IEnumerable<string> words, ProposalKind kind)
    {
        foreach (var word in words) Add(word, kind, "", 0);
    }

    private void Add(string word, ProposalKind kind, string detail, int rank) =>
        _found.Add(new Proposal(word, kind, detail, new TextSpan(_place.Start, _place.Begun.Length)) { Rank = rank });
}
