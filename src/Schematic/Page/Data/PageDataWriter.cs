using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Schematic.Analysis;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Bench;
using Schematic.Fonts;
using Schematic.Layout.Circuits;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Page.Data;

/// <summary>
/// Writes what a page follows as JSON; the README of this room describes it. Texts are written as they are shown, and every character that
/// could end a script element or begin one is written as an escape, so that the text of a file stays data.
/// </summary>
internal sealed class PageDataWriter
{
    /// <summary>The version of the format.</summary>
    public const int Version = 1;

    private readonly AnalysisContext _context;
    private readonly PageElectrics _electrics;
    private readonly Utf8JsonWriter _json;

    private PageDataWriter(AnalysisContext context, PageElectrics electrics, Utf8JsonWriter json) =>
        (_context, _electrics, _json) = (context, electrics, json);

    /// <summary>The data of a panel, fit to stand in a script element.</summary>
    public static string Write(AnalysisContext context, PageElectrics electrics, ImmutableArray<PageRingOut> ringOuts, string fileName)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer)) new PageDataWriter(context, electrics, json).WriteAll(ringOuts, fileName);
        return Encoding.UTF8.GetString(buffer.ToArray());
    }

    private Panel Panel => _context.Panel;

    private void WriteAll(ImmutableArray<PageRingOut> ringOuts, string fileName)
    {
        _json.WriteStartObject();
        _json.WriteNumber("version", Version);
        Text("file", fileName);
        Text("number", Panel.Title.Number);
        Text("print", PanelPrint.Of(Panel));
        _json.WriteBoolean("canBeOperated", _electrics.CanBeOperated);
        List("leftOut", _electrics.LeftOut, Shown);
        WriteStates();
        if (_electrics.CanBeOperated) WriteFollowed();
        WriteThings();
        List("ringOuts", ringOuts, WriteRingOut);
        _json.WriteEndObject();
    }

    private void WriteStates()
    {
        List("variables", _electrics.Variables.Select((v, i) => (v, i)), p => WriteVariable(p.v, p.i));
        Numbers("rest", _electrics.Rest);
        if (!_electrics.CanBeOperated) return;
        Numbers("nodes", _electrics.Diagrams.Row);
        List("moves", _electrics.Moves, WriteMove);
        List("locks", _electrics.Locks, WriteLock);
        List("coils", _electrics.Coils, WriteCoil);
    }

    private void WriteVariable(StateVariable variable, int index)
    {
        _json.WriteStartObject();
        Text("kind", variable.Kind.ToString().ToLowerInvariant());
        Text("name", variable.Name);
        Text("words", WordsOf(variable));
        List("values", variable.Values, Shown);
        _json.WriteNumber("size", variable.Size);
        if (variable.Kind == StateVariableKind.Actuator && Panel.Actuators.FirstOrDefault(a => a.Name == variable.Name) is { } actuator)
        {
            Numbers("springsTo", actuator.Positions.Select(p => p.SpringsTo is { } back ? variable.Values.IndexOf(back) : -1));
            _json.WriteBoolean("endless", actuator.IsEndless);
            // Where another actuator is the push, its lock tells what to do.
            _json.WriteBoolean("pushToTurn", variable.IsPushToTurn);
        }

        _json.WriteNumber("rest", _electrics.Rest[index]);
        _json.WriteEndObject();
    }

    private string WordsOf(StateVariable variable) =>
        variable.Kind == StateVariableKind.Actuator ? Panel.Actuators.FirstOrDefault(a => a.Name == variable.Name)?.Description ?? ""
        : _context.Part(variable.Name)?.Description ?? "";

    private void WriteMove((Move Move, Diagram When) entry)
    {
        var move = entry.Move;
        _json.WriteStartObject();
        _json.WriteNumber("v", move.Variable);
        _json.WriteNumber("from", move.From);
        _json.WriteNumber("to", move.To);
        Text("kind", move.Kind.ToString().ToLowerInvariant());
        Condition("when", entry.When);
        _json.WriteEndObject();
    }

    private void WriteLock(PageLock held)
    {
        _json.WriteStartObject();
        _json.WriteNumber("v", held.Variable);
        Numbers("at", held.At);
        Condition("free", held.Free);
        Condition("mayBeFree", held.MayBeFree);
        Text("until", ContactWords.Of(held.Release));
        _json.WriteEndObject();
    }

    private void WriteCoil(CoilRule coil)
    {
        _json.WriteStartObject();
        _json.WriteNumber("v", coil.Variable);
        Condition("changes", coil.Changes);
        Condition("leaves", coil.Leaves);
        _json.WriteEndObject();
    }

    private void WriteFollowed()
    {
        List("shorted", _electrics.Shorted, s =>
        {
            _json.WriteStartObject();
            Text("name", s.Name);
            Condition("when", s.When);
            _json.WriteEndObject();
        });
        List("loads", _electrics.Loads, WriteLoad);
        List("inputs", _electrics.Inputs, WriteInput);
        List("contacts", _electrics.Contacts, WriteContact);
        if (_electrics.Reference is { } reference) Text("reference", reference.ToString());
        List("conductors", _electrics.Conductors, WriteConductor);
    }

    private void WriteLoad(PageLoad load)
    {
        _json.WriteStartObject();
        Text("name", load.Load.Name);
        Text("words", load.Load.Part.Description);
        Text("kind", load.Load.Kind.ToString().ToLowerInvariant());
        Text("onWord", OnWordOf(load.Load));
        Condition("on", load.On);
        Condition("open", load.Open);
        Volts(load.Cases);
        _json.WriteEndObject();
    }

    private static string OnWordOf(Element load) => load.Part is Relay ? "operated"
        : load.Kind is ElementKind.Lamp or ElementKind.Led ? "lit" : "energised";

    private void WriteInput(PageInput input)
    {
        _json.WriteStartObject();
        Text("name", input.Input.Terminal.ToString());
        Text("words", input.Input.Input.Meaning);
        _json.WriteBoolean("wired", _context.IsInHarness(input.Input.Terminal));
        Condition("low", input.Low);
        Condition("high", input.High);
        Condition("open", input.Open);
        Volts(input.Cases);
        _json.WriteEndObject();
    }

    private void WriteContact(PageContact contact)
    {
        _json.WriteStartObject();
        Text("part", contact.Contact.Part.Designator);
        Text("common", contact.Contact.Common.ToString());
        Text("throw", contact.Contact.Throw.ToString());
        Condition("closed", contact.Closed);
        _json.WriteEndObject();
    }

    private void WriteConductor(PageConductor conductor)
    {
        _json.WriteStartObject();
        List("terminals", _electrics.TerminalsOf(conductor.Node), t => Shown(t.ToString()));
        Condition("live", conductor.Live);
        Condition("behind", conductor.Behind);
        Condition("return", conductor.Return);
        Volts(conductor.Cases);
        _json.WriteEndObject();
    }

    private void Volts(ImmutableArray<PageVolts> cases) => List("volts", cases, c =>
    {
        _json.WriteStartArray();
        _json.WriteNumberValue(_electrics.Diagrams[c.When]);
        if (c.Volts is { } volts) _json.WriteNumberValue(Math.Round(volts, 3) + 0.0);
        else _json.WriteNullValue();
        if (c.Swing is { } swing) _json.WriteNumberValue(swing);
        _json.WriteEndArray();
    });

    private void WriteThings()
    {
        List("parts", Panel.Parts, WritePart);
        List("wires", Panel.Wires, WriteWire);
        List("nets", Panel.Nets, n => Named(n.Name, () => List("terminals", n.Members.Select(m => m.Terminal).Distinct(), t => Shown(t.ToString()))));
        List("cables", Panel.Cables, c => Named(c.Designator, () => Text("words", PartNames.Of(c))));
        var uses = new ContactUses(Panel);
        List("purposes", Panel.Parts.OfType<Connector>().SelectMany(c => uses.Of(c).Where(u => u.Purpose.Length > 0 || u.IsNotTraced || u.IsSpare).Select(u => (c.At(u.Contact), u))), p =>
            Named(p.Item1.ToString(), () => Text("words", p.u.IsNotTraced ? "not traced" : p.u.IsSpare ? "spare" : p.u.Purpose)));
    }

    private void WritePart(Part part) => Named(part.Designator, () =>
    {
        Text("kind", PartNames.Of(part));
        Text("words", part.Description);
        List("terminals", part.Terminals, t => Shown(part.At(t.Name).ToString()));
    });

    private void WriteWire(Wire wire) => Named(wire.Designator, () =>
    {
        Text("from", wire.From.ToString());
        Text("to", wire.To.ToString());
        Text("colour", wire.Colour?.Code ?? "");
        Text("gauge", wire.GaugeText ?? "");
        if (wire.LengthMm is { } length && double.IsFinite(length)) _json.WriteNumber("lengthMm", length);
        Text("cable", wire.Cable ?? "");
        Text("core", wire.Core ?? "");
    });

    private void WriteRingOut(PageRingOut ringOut)
    {
        _json.WriteStartObject();
        Text("key", ringOut.Key);
        Text("title", ringOut.Title);
        List("cautions", ringOut.Cautions, Shown);
        List("notes", ringOut.Notes, Shown);
        List("steps", ringOut.Steps, WriteStep);
        List("file", ringOut.File, _json.WriteStringValue);
        _json.WriteEndObject();
    }

    private void WriteStep(PageStep step)
    {
        _json.WriteStartObject();
        Text("move", step.Move);
        List("stand", step.Stand, s =>
        {
            _json.WriteStartArray();
            Shown(s.Actuator);
            Shown(s.Position ?? "");
            _json.WriteEndArray();
        });
        Text("red", step.Red);
        Text("black", step.Black);
        List("terminals", step.Terminals, Shown);
        _json.WriteBoolean("diode", step.IsDiodeTest);
        Text("expected", step.Expected.Text);
        Text("limits", step.Expected.Limits);
        Text("shows", step.Expected.Kind.ToString().ToLowerInvariant());
        if (double.IsFinite(step.Expected.Least)) _json.WriteNumber("least", step.Expected.Least);
        if (double.IsFinite(step.Expected.Most)) _json.WriteNumber("most", step.Expected.Most);
        _json.WriteEndObject();
    }

    private void Named(string name, Action more)
    {
        _json.WriteStartObject();
        Text("name", name);
        more();
        _json.WriteEndObject();
    }

    private void Text(string name, string text) => _json.WriteString(name, DisplayedText.Of(text));

    private void Shown(string text) => _json.WriteStringValue(DisplayedText.Of(text));

    private void Condition(string name, Diagram condition) => _json.WriteNumber(name, _electrics.Diagrams[condition]);

    private void Numbers(string name, IEnumerable<int> numbers) => List(name, numbers, _json.WriteNumberValue);

    private void List<T>(string name, IEnumerable<T> items, Action<T> write)
    {
        _json.WriteStartArray(name);
        foreach (var item in items) write(item);
        _json.WriteEndArray();
    }
}
