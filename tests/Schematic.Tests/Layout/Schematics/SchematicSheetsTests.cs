using Schematic.Model;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Layout.Schematics;

public class SchematicSheetsTests
{
    private static readonly string[] Sizes = ["A4", "A3", "Letter", "Tabloid"];

    public static TheoryData<int> Batches => [.. Enumerable.Range(0, 10)];

    [Theory]
    [MemberData(nameof(Batches))]
    public void Generated_designs_are_drawn_without_faults_and_join_what_the_panel_joins(int batch)
    {
        for (var i = 0; i < 3; i++)
        {
            var seed = (batch * 3) + i;
            var contacts = 5 + (seed * 7 % 60);
            var panel = DesignGenerator.Generate(seed, contacts) with { Sheet = SheetSize.Find(Sizes[seed % 4], seed % 3 != 0)! };
            SheetProof.Prove(panel, $"seed {seed} of {contacts} contacts on {panel.Sheet.Name} {(panel.Sheet.IsLandscape ? "landscape" : "portrait")}");
        }
    }
}
