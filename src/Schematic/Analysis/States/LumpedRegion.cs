using System.Collections.Immutable;
using Schematic.Analysis.Circuits;

namespace Schematic.Analysis.States;

/// <summary>A part of the circuit between rails: what hangs together by contacts and elements without passing a rail.</summary>
/// <param name="Nodes">Its nodes on which something hangs, without the rails around it.</param>
/// <param name="Elements">The elements that have an end in it.</param>
/// <param name="Contacts">The contacts that have an end in it and can carry current.</param>
public sealed record LumpedRegion(ImmutableArray<int> Nodes, ImmutableArray<Element> Elements, ImmutableArray<Contact> Contacts);

/// <summary>All states in which the nodes of a region are joined in one way: electrically they are one.</summary>
/// <param name="When">The states.</param>
/// <param name="GroupOf">
/// For each node of the region what it is joined to: nodes with one number are joined; -1 - r stands for the rail r.
/// </param>
public sealed record LumpedCase(Diagram When, ImmutableArray<int> GroupOf);
