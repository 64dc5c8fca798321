using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Analysis;

public class PanelCheckerTests
{
    private static readonly SourceText Source = new("test.panel", new string(' ', 100));

    private static readonly ImmutableArray<ICheck> OneOfEachStage =
        [Check(CheckStage.Positions), Check(CheckStage.Conflicts), Check(CheckStage.Quantities), Check(CheckStage.Gaps)];

    [Fact]
    public void All_stages_run_when_nothing_is_an_error() => Assert.Equal(
        ["conflicts", "gaps", "positions", "quantities"], Run(OneOfEachStage));

    [Fact]
    public void Errors_of_reading_leave_conflicts_alone_and_say_so() => Assert.Equal(
        ["syntax", "conflicts", "checks-held-back"],
        PanelChecker.Check(new Panel(), [Finding("syntax", Severity.Error, 0)], OneOfEachStage).Select(f => f.Rule));

    [Fact]
    public void Warnings_of_reading_hold_nothing_back() => Assert.Equal(
        ["syntax", "conflicts", "gaps", "positions", "quantities"],
        PanelChecker.Check(new Panel(), [Finding("syntax", Severity.Warning, 0)], OneOfEachStage).Select(f => f.Rule));

    [Fact]
    public void A_conflict_does_not_hide_gaps_and_holds_back_positions() => Assert.Equal(
        ["conflicts", "gaps", "checks-held-back"],
        Run([Check(CheckStage.Conflicts, Severity.Error), Check(CheckStage.Gaps), Check(CheckStage.Positions), Check(CheckStage.Quantities)]));

    [Fact]
    public void An_error_of_a_position_does_not_hold_back_quantities() => Assert.Equal(
        ["positions", "quantities"], Run([Check(CheckStage.Positions, Severity.Error), Check(CheckStage.Quantities)]));

    [Fact]
    public void Findings_stand_in_the_order_of_the_text_and_equal_ones_once()
    {
        var a = Finding("b-rule", Severity.Warning, 7);
        var b = Finding("a-rule", Severity.Warning, 7);
        var c = Finding("c-rule", Severity.Error, 7);
        var d = Finding("d-rule", Severity.Note, 3);
        var e = d with { Span = SourceSpan.None };
        Assert.Equal([d, c, b, a, e], DiagnosticOrder.Sort([e, a, b, a, c, d]).AsEnumerable());
    }

    private static string[] Run(ImmutableArray<ICheck> checks) =>
        [.. PanelChecker.Check(new Panel(), [], checks).Select(f => f.Rule)];

    private static FixedCheck Check(CheckStage stage, Severity severity = Severity.Warning) =>
        new(stage, Finding(stage.ToString().ToLowerInvariant(), severity, 10 + (int)stage));


    private static Diagnostic Finding(string rule, Severity severity, int at) =>
        new(rule, severity, "Something.", new SourceSpan(Source, new TextSpan(at, 1)));

    private sealed class FixedCheck(CheckStage stage, Diagnostic finding) : ICheck
    {
        public ImmutableArray<string> Rules => [finding.Rule];

        public CheckStage Stage => stage;

        public IEnumerable<Diagnostic> Run(AnalysisContext context) => [finding];
    }
}
