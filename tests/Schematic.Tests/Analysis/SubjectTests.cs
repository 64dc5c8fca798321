using Schematic.Analysis;
using Schematic.Binding;
using Schematic.Diagnostics;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>Every finding of a check names what it is about, and the panel has what it names.</summary>
public class SubjectTests
{
    public static TheoryData<string> Files =>
        [.. Directory.GetFiles(Repository.PathOf("examples/wrong"), "*.panel").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Files))]
    public void A_finding_names_things_that_the_panel_has(string file)
    {
        var panel = PanelLoader.LoadFile(Repository.PathOf($"examples/wrong/{file}")).Panel;
        var names = NamesOf(panel);
        // That checks were held back is about no thing of the panel.
        foreach (var finding in PanelChecker.Check(panel).Where(f => f.Rule != "checks-held-back"))
        {
            Assert.False(finding.Subjects.IsEmpty, $"{finding.Rule} names nothing: {finding.Message}");
            var all = finding.Subjects.Concat(finding.Trace.OfType<FactStep>().SelectMany(f => f.Subjects));
            Assert.Empty(all.Where(s => !names.Contains(s)).Select(s => $"{finding.Rule}: {s}"));
            var places = finding.Trace.OfType<PathStep>().SelectMany(p => p.Terminals).Select(t => new Subject(SubjectKind.Terminal, t));
            Assert.Empty(places.Where(s => !names.Contains(s)).Select(s => $"{finding.Rule}: {s}"));
            Assert.All(finding.Values, v => Assert.True(double.IsFinite(v.Value), $"{finding.Rule}: {v}"));
        }
    }

    private static HashSet<Subject> NamesOf(Panel panel) =>
    [
        .. panel.Parts.Select(p => new Subject(SubjectKind.Part, p.Designator)),
        .. panel.Parts.SelectMany(p => p.Terminals.Select(t => new Subject(SubjectKind.Terminal, p.At(t.Name).ToString()))),
        .. panel.Wires.Select(w => new Subject(SubjectKind.Wire, w.Designator)),
        .. panel.Cables.Select(c => new Subject(SubjectKind.Cable, c.Designator)),
        .. panel.Nets.Select(n => new Subject(SubjectKind.Net, n.Name)),
        .. panel.Actuators.Select(a => new Subject(SubjectKind.Actuator, a.Name)),
    ];
}
