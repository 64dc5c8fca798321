using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Builds actuators.</summary>
internal sealed class ActuatorBinder(NameTable names, BindingReporter report)
{
    private const string PushToTurn = "push-to-turn";

    private readonly NameTable _names = names;

    /// <summary>Builds an actuator and makes its positions known; null when its name was taken.</summary>
    public Actuator? Bind(Scope scope, ActuatorSyntax syntax)
    {
        var known = CheckPositions(scope, syntax);
        if (_names.Own(scope, syntax.Name.Text, syntax.Name.Span) is not { } declared) return null;
        declared.IsIncomplete |= syntax.HasErrors || known.IsEmpty;
        if (known.IsEmpty) return null;
        var reader = new ClauseReader(syntax.Clauses, scope, report);
        declared.Actuator = new Actuator(declared.FullName, known, declared.Span)
        {
            Description = syntax.Description?.Text ?? "",
            IsEndless = reader.Has("endless"),
            Operator = OperatorOf(reader),
            IsPushToTurn = reader.Has(PushToTurn),
        };
        return declared.Actuator;
    }

    /// <summary>
    /// The lock of an actuator that turns only while another, the push, is out of its rest position; null where it has none, or where
    /// no contact follows the push.
    /// </summary>
    public ActuatorLock? PushOf(Scope scope, ActuatorSyntax syntax)
    {
        var clause = syntax.Clauses.FirstOrDefault(c => c.Keyword == PushToTurn);
        var names = clause?.All<ContactSyntax>().ToImmutableArray() ?? [];
        if (names.IsEmpty || _names.Find(scope, syntax.Name.Text)?.Actuator is not { } turned) return null;
        var span = scope.At(names[0].Span);
        if (names.Length > 1 || names[0].Part is not null || names[0].To is not null || names[0].IsNotTraced)
        {
            report.Contradiction(span, $"`{PushToTurn}` takes the name of one actuator.", "Name the one that moves when this is pushed, or leave the name out where no contact follows the push.", turned.Span);
            return null;
        }

        if (_names.ResolveActuator(scope, names[0].From)?.Actuator is not { } push) return null;
        if (push == turned)
        {
            report.Contradiction(span, $"`{push.Name}` cannot be pushed and turned as one.", "Name the actuator that moves when it is pushed, or leave the name out where no contact follows the push.", turned.Span);
            return null;
        }

        var pushed = push.Positions.Where(p => !p.IsRest).Select(p => p.Name).ToImmutableArray();
        return new ActuatorLock(turned.Name, [.. turned.Positions.Select(p => p.Name)], new PositionCondition(push.Name, pushed, span), span) { IsPush = true };
    }

    private static OperatorKind OperatorOf(ClauseReader reader) => reader.Choice("lever", "button", "knob", "cam", "magnet") switch
    {
        "lever" => OperatorKind.Lever,
        "button" => OperatorKind.Button,
        "knob" => OperatorKind.Knob,
        "cam" => OperatorKind.Cam,
        "magnet" => OperatorKind.Magnet,
        _ => OperatorKind.Unstated,
    };

    private ImmutableArray<ActuatorPosition> CheckPositions(Scope scope, ActuatorSyntax syntax)
    {
        if (syntax.Positions.IsEmpty && !syntax.HasErrors)
        {
            report.MissingValue(
                scope.At(syntax.Name.Span), $"`{syntax.Name.Text}` has no positions.",
                $"List them in mechanical order: actuator {syntax.Name.Text} {{ normal rest  reverse }}.");
        }

        var byName = new Dictionary<string, PositionSyntax>(StringComparer.Ordinal);
        foreach (var position in syntax.Positions)
        {
            if (!byName.TryAdd(position.Name.Text, position))
                report.DuplicateName(scope.At(position.Name.Span), position.Name.Text, scope.At(byName[position.Name.Text].Name.Span));
        }

        CheckRest(scope, syntax);
        CheckSprings(scope, byName);
        return
        [
            .. byName.Values.OrderBy(p => p.Name.Span.Start).Select(p => new ActuatorPosition(
                p.Name.Text, p == RestOf(syntax), SpringTarget(scope, syntax, p, byName), scope.At(p.Name.Span))),
        ];
    }

    /// <summary>The position marked rest; without a mark the first that is not momentary.</summary>
    private static PositionSyntax RestOf(ActuatorSyntax syntax) =>
        syntax.Positions.FirstOrDefault(p => p.Rest is not null)
        ?? syntax.Positions.FirstOrDefault(p => p.SpringsTo is null)
        ?? syntax.Positions[0];

    private void CheckRest(Scope scope, ActuatorSyntax syntax)
    {
        var resting = syntax.Positions.Where(p => p.Rest is not null).ToList();
        foreach (var second in resting.Skip(1))
            report.StatedTwice(scope.At(second.Rest!.Span), "the rest position", scope.At(resting[0].Rest!.Span));
        foreach (var held in resting.Take(1).Where(p => p.SpringsTo is not null))
        {
            report.Contradiction(
                scope.At(held.SpringsTo!.Span), $"`{held.Name.Text}` cannot be the rest position and spring away from itself.",
                "Mark the position it springs to as rest.", scope.At(held.Rest!.Span));
        }
    }

    /// <summary>Let go, an actuator comes to stand somewhere: springs do not lead round in a circle.</summary>
    private void CheckSprings(Scope scope, Dictionary<string, PositionSyntax> byName)
    {
        foreach (var start in byName.Values.OrderBy(p => p.Name.Span.Start))
        {
            var at = start;
            for (var i = 0; i < byName.Count && at?.SpringsTo is { } target; i++)
            {
                if (target.Text == at.Name.Text) break; // reported where its target is looked up
                at = byName.GetValueOrDefault(target.Text);
                if (at != start) continue;
                report.Contradiction(
                    scope.At(start.SpringsTo!.Span), $"`{start.Name.Text}` springs away and, by way of others, back to itself.",
                    "One of these positions must stay by itself.", scope.At(target.Span));
                return;
            }
        }
    }

    private string? SpringTarget(
        Scope scope, ActuatorSyntax syntax, PositionSyntax position, Dictionary<string, PositionSyntax> byName)
    {
        if (position.SpringsTo is not { } target) return null;
        if (!byName.ContainsKey(target.Text))
        {
            if (!syntax.HasErrors)
                report.UnknownPosition(scope.At(target.Span), syntax.Name.Text, target.Text, [.. byName.Keys], scope.At(syntax.Name.Span));
            return null;
        }

        if (target.Text != position.Name.Text) return target.Text;
        report.Contradiction(
            scope.At(target.Span), $"`{target.Text}` springs to itself.", "Name the position it returns to when let go.",
            scope.At(position.Name.Span));
        return null;
    }
}
