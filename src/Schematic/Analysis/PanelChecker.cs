using System.Collections.Immutable;
using Schematic.Analysis.Loads;
using Schematic.Analysis.Positions;
using Schematic.Analysis.Wiring;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Analysis;

/// <summary>Runs all checks over a panel.</summary>
public static class PanelChecker
{
    private const string HeldBackRule = "checks-held-back";

    /// <summary>Every check of the program, in the order in which they run.</summary>
    public static ImmutableArray<ICheck> AllChecks { get; } =
    [
        new ContradictoryDataCheck(),
        new ContactInTwoNetsCheck(),
        new ShortBetweenNetsCheck(),
        new JoiningWireCheck(),
        new RepeatedMemberCheck(),
        new TwoWiresInContactCheck(),
        new WireToItselfCheck(),
        new WireSizeCheck(),
        new WireColourCheck(),
        new MatesMismatchCheck(),
        new SharedContactCheck(),
        new SpareContactUsedCheck(),
        new BridgedPartCheck(),
        new SimilarNamesCheck(),
        new GrayCodeCheck(),
        new FloatingContactCheck(),
        new NotTracedCheck(),
        new WireDetailsCheck(),
        new UnknownRatingCheck(),
        new SingleMemberNetCheck(),
        new NetWiringCheck(),
        new WireWithoutNetCheck(),
        new DeadEndCheck(),
        new HalfConnectedCheck(),
        new UnusedCheck(),
        new SupplyShortedCheck(),
        new SuppliesTiedCheck(),
        new OverLimitInputCheck(),
        new PairLimitCheck(),
        new FloatingInputCheck(),
        new InputNeverChangesCheck(),
        new SneakPathCheck(),
        new LoadNeverEnergisedCheck(),
        new IdleContactCheck(),
        new GhostKeyCheck(),
        new RelayChatterCheck(),
        new RelayFlashesCheck(),
        new LockNeverReleasedCheck(),
        new ExpectationCheck(),
        new NeverCheck(),
        new ClaimUndecidedCheck(),
        new ClaimEmptyCheck(),
        new ProofIncompleteCheck(),
        new WireOverloadCheck(),
        new ProtectorCheck(),
        new SupplyCheck(),
        new LoadTooWeakCheck(),
        new CoilVoltageCheck(),
        new LoadRatingCheck(),
        new DeviceCurrentCheck(),
        new SwitchLoadCheck(),
        new SuppressionCheck(),
        new SemiconductorCheck(),
        new VoltageDropCheck(),
    ];

    /// <summary>All findings about a panel that was read without errors, in the order of the text.</summary>
    public static ImmutableArray<Diagnostic> Check(Panel panel) => Check(panel, []);

    /// <summary>
    /// All findings: those of reading, <paramref name="reading"/>, and those of the checks, in the order of the text.
    /// </summary>
    public static ImmutableArray<Diagnostic> Check(Panel panel, ImmutableArray<Diagnostic> reading) =>
        Check(panel, reading, AllChecks);

    /// <summary>As above with the checks given.</summary>
    public static ImmutableArray<Diagnostic> Check(
        Panel panel, ImmutableArray<Diagnostic> reading, ImmutableArray<ICheck> checks) =>
        Check(new AnalysisContext(panel), reading, checks);

    /// <summary>
    /// As above; what is found out on the way stays in the context, for whoever draws the panel next. When the context's token is
    /// cancelled the checks stop with an <see cref="OperationCanceledException"/>.
    /// </summary>
    public static ImmutableArray<Diagnostic> Check(
        AnalysisContext context, ImmutableArray<Diagnostic> reading, ImmutableArray<ICheck> checks)
    {
        var found = new List<Diagnostic>(reading);
        var couldNotRead = reading.Any(IsError);
        var wiringIsWrong = false;
        var heldBack = false;
        foreach (var stage in checks.GroupBy(c => c.Stage).OrderBy(g => g.Key))
        {
            if (stage.Key == CheckStage.Conflicts || !(couldNotRead || (wiringIsWrong && stage.Key != CheckStage.Gaps)))
            {
                var fresh = stage.SelectMany(check => Run(check, context)).Select(context.Assumptions.Beside).ToList();
                wiringIsWrong |= stage.Key <= CheckStage.Gaps && fresh.Exists(IsError);
                found.AddRange(fresh);
            }
            else
            {
                heldBack = true;
            }
        }

        if (heldBack) found.Add(HeldBack(couldNotRead));
        return DiagnosticOrder.Sort(found);
    }

    private static IEnumerable<Diagnostic> Run(ICheck check, AnalysisContext context)
    {
        context.Cancelled.ThrowIfCancellationRequested();
        return check.Run(context);
    }

    /// <summary>Says that this is not all: a list of errors that ends could be taken for a whole check.</summary>
    private static Diagnostic HeldBack(bool couldNotRead) => new(
        HeldBackRule,
        Severity.Note,
        couldNotRead
            ? "What is missing, and what happens in each position, was not checked because of the errors in the text."
            : "What happens in each position was not checked because of the errors in the wiring.",
        SourceSpan.None)
    {
        Help = "Correct the errors, then check again.",
    };

    private static bool IsError(Diagnostic diagnostic) => diagnostic.Severity == Severity.Error;
}
