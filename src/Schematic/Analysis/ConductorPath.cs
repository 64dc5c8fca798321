using System.Collections.Immutable;
using System.Text;
using Schematic.Model;

namespace Schematic.Analysis;

/// <summary>A way from one terminal to another along joints.</summary>
/// <param name="From">Where it begins.</param>
/// <param name="Joints">The joints in order; none when it ends where it begins.</param>
public sealed record ConductorPath(TerminalId From, ImmutableArray<Joint> Joints)
{
    /// <summary>All terminals passed, both ends included.</summary>
    public ImmutableArray<TerminalId> Terminals
    {
        get
        {
            var passed = ImmutableArray.CreateBuilder<TerminalId>(Joints.Length + 1);
            passed.Add(From);
            foreach (var joint in Joints) passed.Add(joint.Other(passed[^1]));
            return passed.MoveToImmutable();
        }
    }

    /// <summary>
    /// The path as a finger follows it: <c>S1:C - J1:5 - P1:5 - W3 - A1:IN2</c>. A net is named once, however many of its
    /// members are passed.
    /// </summary>
    public override string ToString()
    {
        var text = new StringBuilder(From.ToString());
        var at = From;
        for (var i = 0; i < Joints.Length; i++)
        {
            at = Joints[i].Other(at);
            var staysInNet = i + 1 < Joints.Length && Joints[i].Kind == JointKind.Net
                && Joints[i + 1].Kind == JointKind.Net && Joints[i + 1].Name == Joints[i].Name;
            if (staysInNet) continue;
            if (Joints[i].Label.Length > 0) text.Append(" - ").Append(Joints[i].Label);
            text.Append(" - ").Append(at.ToString());
        }

        return text.ToString();
    }
}
