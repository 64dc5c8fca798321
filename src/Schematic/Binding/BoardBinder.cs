using Schematic.Language;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>Builds input boards. What follows a list of inputs holds for these inputs.</summary>
internal static class BoardBinder
{
    /// <summary>Builds one.</summary>
    public static Board Make(DeviceStatement device)
    {
        var inputs = new Dictionary<string, BoardInput>(StringComparer.Ordinal);
        var order = new List<string>();
        var grounds = new List<(string Name, SourceSpan Span)>();
        List<string> group = [];
        foreach (var clause in device.Syntax.Block)
        {
            switch (clause.Keyword)
            {
                case "inputs":
                    group = DeclareInputs(device, clause, inputs, order);
                    break;
                case "ground":
                    grounds.AddRange(device.NamesOf(clause));
                    break;
                case "meaning":
                    SetMeaning(device, clause, inputs);
                    break;
                default:
                    SetInputData(device, clause, group, inputs);
                    break;
            }
        }

        device.CheckTwice(order.Select(n => (n, inputs[n].Span)).Concat(grounds));
        if (order.Count == 0 && !device.Syntax.HasErrors)
        {
            device.Report.MissingValue(
                device.Span, $"`{device.ShownName}` has no inputs.", "List them in its block: { inputs IN1..IN16 ; ground GND }.");
        }

        return new Board(device.Name, [.. order.Select(n => inputs[n])], [.. grounds.Select(g => g.Name)], device.Span)
        {
            Terminals = [.. order.Select(n => new Terminal(n, inputs[n].Span)), .. grounds.Select(g => new Terminal(g.Name, g.Span))],
        };
    }

    private static List<string> DeclareInputs(
        DeviceStatement device, ClauseSyntax clause, Dictionary<string, BoardInput> inputs, List<string> order)
    {
        var group = new List<string>();
        foreach (var (name, span) in device.NamesOf(clause))
        {
            if (inputs.TryAdd(name, new BoardInput(name, null, span)))
            {
                order.Add(name);
                group.Add(name);
            }
            else
            {
                device.Report.DuplicateName(span, name, inputs[name].Span);
            }
        }

        return group;
    }

    private static void SetMeaning(DeviceStatement device, ClauseSyntax clause, Dictionary<string, BoardInput> inputs)
    {
        var words = clause.All<WordSyntax>().ToList();
        if (inputs.TryGetValue(words[0].Text, out var input)) inputs[words[0].Text] = input with { Meaning = words[1].Text };
        else if (!device.Syntax.HasErrors)
            device.Report.UnknownContact(device.Scope.At(words[0].Span), device.ShownName, [words[0].Text], [.. inputs.Keys], device.Span);
    }

    private static void SetInputData(
        DeviceStatement device, ClauseSyntax clause, List<string> group, Dictionary<string, BoardInput> inputs)
    {
        if (group.Count == 0)
        {
            if (device.Syntax.HasErrors) return;
            device.Report.MissingValue(
                device.Scope.At(clause.KeywordSpan), $"`{clause.Keyword}` does not say for which inputs it holds.",
                "Write it after them: inputs IN1..IN16 max 5.5 V.");
            return;
        }

        var isPull = clause.Keyword is "pull-up" or "pull-down";
        double? volts = null;
        double? ohms = null;
        foreach (var quantity in clause.All<QuantitySyntax>())
        {
            if (isPull && quantity.Dimension == Dimension.Resistance) ohms = device.Reader.Value(quantity, Dimension.Resistance, "");
            else if (clause.Keyword != "pull-down") volts = device.Reader.Value(quantity, Dimension.Voltage, "a voltage", zeroAllowed: true);
            else device.Reader.Value(quantity, Dimension.Resistance, "a resistance");
        }

        if (clause.Keyword == "pull-up" && (volts is null || ohms is null) && clause.Values.Length < 2)
        {
            device.Report.MissingValue(
                device.Scope.At(clause.Span), "A pull-up needs the voltage it goes to and its resistance.", "Write it so: pull-up 5 V 10 kohm.");
        }

        foreach (var name in group)
        {
            inputs[name] = clause.Keyword switch
            {
                "max" => inputs[name] with { MaxVolts = volts },
                "low" => inputs[name] with { LowVolts = volts },
                "high" => inputs[name] with { HighVolts = volts },
                "pull-up" => inputs[name] with { PullUpVolts = volts, PullUpOhms = ohms ?? 0 },
                _ => inputs[name] with { PullDownOhms = ohms },
            };
        }
    }
}
