using System.Text.Json;
using Schematic.Diagnostics;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Diagnostics;

public class JsonPrinterTests
{
    [Fact]
    public void The_form_is_the_one_that_the_README_describes()
    {
        var source = new SourceText("x.panel", "net A\nnet RTN J1:1\n");
        var finding = new Diagnostic("single-member-net", Severity.Warning, "Net RTN lists J1:1 alone.", new SourceSpan(source, new TextSpan(10, 3)))
        {
            Help = "List \"both\" ends (µ).",
            Repairs = [Repair.Write(new SourceSpan(source, new TextSpan(4, 1)), "B")],
            Related = [new RelatedSpan(new SourceSpan(source, new TextSpan(4, 1)), "net A")],
            Subjects = [new Subject(SubjectKind.Net, "RTN"), new Subject(SubjectKind.Terminal, "J1:1")],
            Values = [new FindingValue("members", 1, "1")],
            Assumed = ["J1 has a pitch chosen by the program"],
            Trace =
            [
                new MoveStep(MoveAction.LetGo, "GRIP", "centre"), new StateStep([new StandingThing("K1", "operated")]),
                new PathStep("J1:1", [new PathHop(PathOver.Wire, "W1", "J1:2")]),
                new FactStep("J1:2 is dead") { Subjects = [new Subject(SubjectKind.Terminal, "J1:2")], Values = [new FindingValue("stands at", 0.5, "V")] },
            ],
        };
        Assert.Equal(
            """
            {
              "format": "schematic-findings",
              "version": 2,
              "file": "dir/x.panel",
              "errors": 0,
              "warnings": 1,
              "notes": 0,
              "findings": [
                {
                  "rule": "single-member-net",
                  "severity": "warning",
                  "message": "Net RTN lists J1:1 alone.",
                  "help": "List \"both\" ends (µ).",
                  "span": {
                    "file": "x.panel",
                    "offset": 10,
                    "length": 3,
                    "line": 2,
                    "column": 5,
                    "end_line": 2,
                    "end_column": 8
                  },
                  "related": [
                    {
                      "message": "net A",
                      "span": {
                        "file": "x.panel",
                        "offset": 4,
                        "length": 1,
                        "line": 1,
                        "column": 5,
                        "end_line": 1,
                        "end_column": 6
                      }
                    }
                  ],
                  "repairs": [
                    {
                      "title": "write `B`",
                      "span": {
                        "file": "x.panel",
                        "offset": 4,
                        "length": 1,
                        "line": 1,
                        "column": 5,
                        "end_line": 1,
                        "end_column": 6
                      },
                      "text": "B"
                    }
                  ],
                  "subjects": [
                    {
                      "kind": "net",
                      "name": "RTN"
                    },
                    {
                      "kind": "terminal",
                      "name": "J1:1"
                    }
                  ],
                  "values": [
                    {
                      "name": "members",
                      "value": 1,
                      "unit": "1"
                    }
                  ],
                  "assumed": [
                    "J1 has a pitch chosen by the program"
                  ],
                  "trace": [
                    {
                      "kind": "move",
                      "text": "let GRIP go: it springs to centre",
                      "action": "letgo",
                      "actuator": "GRIP",
                      "position": "centre"
                    },
                    {
                      "kind": "state",
                      "text": "K1 operated",
                      "things": [
                        {
                          "name": "K1",
                          "stands": "operated"
                        }
                      ]
                    },
                    {
                      "kind": "path",
                      "text": "J1:1 - W1 - J1:2",
                      "from": "J1:1",
                      "hops": [
                        {
                          "over": "wire",
                          "name": "W1",
                          "to": "J1:2"
                        }
                      ]
                    },
                    {
                      "kind": "fact",
                      "text": "J1:2 is dead",
                      "subjects": [
                        {
                          "kind": "terminal",
                          "name": "J1:2"
                        }
                      ],
                      "values": [
                        {
                          "name": "stands at",
                          "value": 0.5,
                          "unit": "V"
                        }
                      ]
                    }
                  ]
                }
              ]
            }

            """,
            Printed("dir/x.panel", finding));
    }

    [Fact]
    public void What_is_missing_is_null_or_empty()
    {
        using var json = JsonDocument.Parse(Printed("-", new Diagnostic("some-rule", Severity.Error, "Something.", SourceSpan.None)));
        var finding = json.RootElement.GetProperty("findings")[0];
        Assert.Equal(JsonValueKind.Null, finding.GetProperty("span").ValueKind);
        Assert.Equal(JsonValueKind.Null, finding.GetProperty("help").ValueKind);
        Assert.Equal(0, finding.GetProperty("related").GetArrayLength());
        Assert.Equal(1, json.RootElement.GetProperty("errors").GetInt32());
    }

    private static string Printed(string file, params Diagnostic[] diagnostics)
    {
        var output = new StringWriter();
        JsonPrinter.Print(file, diagnostics, output);
        return output.ToString();
    }
}
