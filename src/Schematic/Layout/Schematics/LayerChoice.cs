using System.Collections.Immutable;

namespace Schematic.Layout.Schematics;

/// <summary>A column and the facings for every item of a sheet, and what they cost by guess.</summary>
internal sealed record LayerChoice(double Cost, ImmutableArray<(int Layer, ImmutableArray<Facing> Facings)> Items)
{
    public bool IsSameAs(LayerChoice other) =>
        Items.Zip(other.Items).All(p => p.First.Layer == p.Second.Layer && p.First.Facings.SequenceEqual(p.Second.Facings));
}
