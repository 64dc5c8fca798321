using Schematic.Bench;
using Schematic.Bench.Faults;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Bench.Faults;

/// <summary>Whose solder may run together: contacts up to 1.35 times the least distance apart (own choice), and the next of a strip.</summary>
public class FaceNeighboursTests
{
    [Theory]
    [InlineData("J1:1", "J1:2", true)]
    [InlineData("J1:2", "J1:3", true)]
    [InlineData("J1:3", "J1:4", false)]
    [InlineData("J1:1", "J1:3", false)]
    [InlineData("X1:1", "X1:2", true)]
    [InlineData("X1:1", "X1:3", false)]
    [InlineData("J1:1", "X1:1", false)]
    public void Contacts_near_each_other_are_neighbours(string one, string other, bool expected)
    {
        // The least distance is 10 mm: 13.4 mm is near, 13.6 mm is not.
        var panel = TestPanels.Load("""
            connector J1 { pins ; positions { 1 0 mm 0 mm ; 2 10 mm 0 mm ; 3 23.4 mm 0 mm ; 4 37 mm 0 mm } }
            terminals X1 { 1..3 }
            """);
        var neighbours = new FaceNeighbours(BenchCircuit.Read(panel, BenchSide.Harness));
        static TerminalId Id(string text) => new(text.Split(':')[0], text.Split(':')[1]);
        Assert.Equal(expected, neighbours.AreNeighbours(Id(one), Id(other)));
        Assert.Equal(expected, neighbours.AreNeighbours(Id(other), Id(one)));
    }
}
