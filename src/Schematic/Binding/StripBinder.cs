using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Builds terminal strips.</summary>
internal static class StripBinder
{
    private static readonly string[] MayRepeat = ["jumper", "spare", "not-traced"];

    /// <summary>Builds one.</summary>
    public static TerminalStrip Make(DeviceStatement device)
    {
        var block = new ClauseReader(device.Syntax.Block, device.Scope, device.Report, MayRepeat);
        var own = device.Syntax.Block.Where(c => c.Keyword.Length == 0).SelectMany(c => device.NamesOf(c)).ToList();
        device.CheckTwice(own);
        if (own.Count == 0 && !device.Syntax.HasErrors)
            device.Report.MissingValue(device.Span, $"`{device.ShownName}` has no terminals.", "List them in its block: { 1..12 }.");
        var known = own.Select(o => o.Name).Distinct(StringComparer.Ordinal).ToList();
        var strip = new TerminalStrip(device.Name, device.Span)
        {
            Terminals = [.. own.DistinctBy(o => o.Name, StringComparer.Ordinal).Select(o => new Terminal(o.Name, o.Span))],
            Jumpers = [.. OwnLists(device, "jumper", known)],
            Spares = [.. OwnLists(device, "spare", known).SelectMany(s => s)],
        };
        return block.Count("wires", 1, 100) is { } wires ? strip with { WiresPerTerminal = wires } : strip;
    }

    /// <summary>The lists after a keyword, each name one of the strip's own.</summary>
    private static IEnumerable<ImmutableArray<string>> OwnLists(DeviceStatement device, string keyword, List<string> known)
    {
        var set = known.ToHashSet(StringComparer.Ordinal);
        foreach (var clause in device.Syntax.Block.Where(c => c.Keyword == keyword))
        {
            var list = ImmutableArray.CreateBuilder<string>();
            foreach (var (name, span) in device.NamesOf(clause))
            {
                if (set.Contains(name)) list.Add(name);
                else if (!device.Syntax.HasErrors)
                    device.Report.UnknownContact(span, device.ShownName, [name], known, device.Span);
            }

            yield return list.DrainToImmutable();
        }
    }
}
