using Schematic.Binding;
using Schematic.Model;
using Schematic.Tests.Language;
using Xunit;

namespace Schematic.Tests.Binding;

public class InsertLibraryTests
{
    public static TheoryData<string> Names => [.. InsertLibrary.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_connector_that_names_an_arrangement_has_the_contacts_of_its_file(string name)
    {
        var there = TestPanels.Load(InsertLibrary.TextOf(name)!).Parts.OfType<Connector>().First();
        var here = (Connector)TestPanels.Load($"connector P1 {{ sockets ; insert {name} ; solder }}").Parts[0];
        Assert.Equal(there.Insert.Contacts.AsEnumerable(), here.Insert.Contacts);
        Assert.Equal(there.Insert.Source, here.Insert.Source);
        Assert.Equal((there.ContactSize, Gender.Sockets, Termination.Solder), (here.ContactSize, here.Gender, here.Termination));
    }

    [Fact]
    public void What_the_connector_says_of_itself_wins()
    {
        var here = (Connector)TestPanels.Load("connector J1 { pins ; insert d-subminiature-9 ; size 16 ; source \"my own\" ; strip 5 mm }").Parts[0];
        Assert.Equal(("16", "my own", 5.0), (here.ContactSize, here.Insert.Source, here.StripMm));
    }

    [Fact]
    public void Mistakes_are_told_where_the_arrangement_is_named() => MarkedText.Gives(
        """
        connector J1 { pins ; insert [[din-6]] }
        connector J2 { pins ; insert din-5 ; [[spiral]] 7 }
        net A J1:1 J2:1
        """,
        "unknown-name: `din-6` is not an arrangement of the library; 'schematic inserts' lists them. -> Did you mean `din-3`?",
        "contradiction: `spiral` describes an insert beside the one that is named. -> Keep `insert`, or describe the insert yourself.");
}
