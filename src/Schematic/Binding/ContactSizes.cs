using System.Collections.Immutable;

namespace Schematic.Binding;

/// <summary>The contact sizes of a connector, in the trade's numbers and in millimetres of pin diameter where that is known.</summary>
internal sealed record ContactSizes(string? Common, ImmutableDictionary<string, string> Others)
{
    public double? CommonMm => Common is null ? null : Inserts.ContactSizes.PinDiameterMm(Common);

    public ImmutableDictionary<string, double> OthersMm => Others
        .Select(o => (o.Key, Value: Inserts.ContactSizes.PinDiameterMm(o.Value)))
        .Where(o => o.Value is not null)
        .ToImmutableDictionary(o => o.Key, o => o.Value!.Value, StringComparer.Ordinal);
}
