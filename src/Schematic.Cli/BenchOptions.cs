using System.CommandLine;
using Schematic.Bench;
using Schematic.Model;

namespace Schematic.Cli;

/// <summary>The options that say what lies on the bench.</summary>
public sealed class BenchOptions
{
    private readonly Option<bool> _unit = new("--unit") { Description = "the salvaged unit alone (usual where there is one)" };

    private readonly Option<bool> _harness = new("--harness") { Description = "the harness alone, unplugged" };

    private readonly Option<bool> _mated = new("--mated") { Description = "all of it, plugged together" };

    private readonly Option<string?> _part = new("--part") { Description = "put leads on this connector or strip alone", HelpName = "NAME" };

    /// <summary>Adds the options to a command; one side at most may be given.</summary>
    public void AddTo(Command command)
    {
        command.Options.Add(_unit);
        command.Options.Add(_harness);
        command.Options.Add(_mated);
        command.Options.Add(_part);
        command.Validators.Add(result =>
        {
            if (new[] { _unit, _harness, _mated }.Count(o => result.GetValue(o)) > 1) result.AddError("Give one of --unit, --harness and --mated.");
        });
    }

    /// <summary>The one part that leads are put on, or null.</summary>
    public string? PartOf(ParseResult parsed) => parsed.GetValue(_part);

    /// <summary>What lies on the bench; null when it cannot be measured, which has then been said on standard error.</summary>
    public BenchCircuit? Read(CliConsole console, ParseResult parsed, Panel panel)
    {
        var side = parsed.GetValue(_unit) ? BenchSide.Unit
            : parsed.GetValue(_harness) ? BenchSide.Harness
            : parsed.GetValue(_mated) ? BenchSide.Mated
            : BenchCut.UsualSide(panel);
        var part = parsed.GetValue(_part);
        var circuit = BenchCircuit.Read(panel, side, part);
        if (circuit.Accessible.Any(t => t != circuit.FrameNumber)) return circuit;
        console.Complain(part is null
            ? $"the panel has no {(side == BenchSide.Unit ? "unit: no device is joined to a connector's contacts" : "contacts that a lead could be put on")}."
            : $"'{part}' has no contacts that a lead could be put on; --unit, --harness or --mated says what lies on the bench.");
        return null;
    }
}
