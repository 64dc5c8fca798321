namespace Schematic.Model;

/// <summary>What one piece costs. The amount is exact; the currency is a code such as <c>EUR</c>, or empty.</summary>
public sealed record Price(decimal Amount, string Currency);
