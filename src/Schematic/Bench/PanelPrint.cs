using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Schematic.Analysis;
using Schematic.Analysis.Circuits;
using Schematic.Model;

namespace Schematic.Bench;

/// <summary>
/// A short print of what a panel states electrically: contacts, devices with their figures, joints, actuators. Titles, prices,
/// lengths, colours and remarks do not count; nor does the order of the file.
/// </summary>
public static class PanelPrint
{
    /// <summary>The print, sixteen hexadecimal digits.</summary>
    public static string Of(Panel panel)
    {
        var context = new AnalysisContext(panel);
        var circuit = new Circuit(context);
        var lines = new List<string>();
        lines.AddRange(panel.Parts.Select(p => $"{p.GetType().Name} {p.Designator} {string.Join(' ', p.Terminals.Select(t => t.Name))}"));
        lines.AddRange(context.Connectivity.FixedJoints.Concat(context.Connectivity.WireJoints).Concat(context.Connectivity.NetJoints)
            .Select(j => $"{j.Kind} {(j.From < j.To ? j.From : j.To)} {(j.From < j.To ? j.To : j.From)}"));
        lines.AddRange(circuit.Elements.Select(e => string.Create(CultureInfo.InvariantCulture, $"{e.Kind} {e.From} {e.To} {e.Ohms:g6} {e.Volts:g6}")));
        lines.AddRange(circuit.Contacts.Select(c => $"contact {c.Common} {c.Throw} {Words(c.When)}"));
        lines.AddRange(panel.Actuators.Select(a => $"{a.Name} {a.IsEndless} {string.Join(' ', a.Positions.Select(p => $"{p.Name} {p.IsRest} {p.SpringsTo}"))}"));
        lines.Sort(StringComparer.Ordinal);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', lines))))[..16];
    }

    /// <summary>A condition in words that are the same for conditions written alike.</summary>
    internal static string Words(Condition condition) => condition.Accept(new Wording());

    private sealed class Wording : IConditionVisitor<string>
    {
        public string Visit(PositionCondition at) => $"{at.Actuator} at {string.Join(' ', at.Positions)}";

        public string Visit(UntracedCondition untraced) => $"{untraced.Actuator} ? {untraced.Contact}";

        public string Visit(EnergisedCondition energised) => $"{energised.Part} {energised.Energised}";

        public string Visit(DelayedCondition delayed) => $"{delayed.Relay} {delayed.Word}";

        public string Visit(SupplyCondition supply) => $"{supply.Supply} {supply.On}";

        public string Visit(AllCondition all) => $"({string.Join(" and ", all.Parts.Select(p => p.Accept(this)))})";

        public string Visit(AnyCondition any) => $"({string.Join(" or ", any.Parts.Select(p => p.Accept(this)))})";
    }
}
