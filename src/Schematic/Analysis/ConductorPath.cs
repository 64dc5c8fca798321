using System.Collections.Immutable;
using Schematic.Diagnostics;
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

    /// <summary>The path as a step of a trace. A net is named once, however many of its members are passed.</summary>
    public PathStep Step
    {
        get
        {
            var hops = ImmutableArray.CreateBuilder<PathHop>();
            var at = From;
            for (var i = 0; i < Joints.Length; i++)
            {
                at = Joints[i].Other(at);
                var staysInNet = i + 1 < Joints.Length && Joints[i].Kind == JointKind.Net
                    && Joints[i + 1].Kind == JointKind.Net && Joints[i + 1].Name == Joints[i].Name;
                if (!staysInNet) hops.Add(new PathHop(Joints[i].Over, Joints[i].Name, at.ToString()));
            }

            return new PathStep(From.ToString(), hops.ToImmutable());
        }
    }

    /// <inheritdoc/>
    public override string ToString() => Step.ToString();
}
