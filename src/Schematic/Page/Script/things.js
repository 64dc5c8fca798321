// The things of the panel by name: parts, terminals, wires, nets, cables and actuators, and what is told about each.

const KIND_WORDS = { part: 'Part', terminal: 'Contact', wire: 'Wire', net: 'Net', cable: 'Cable', actuator: 'Actuator' };

function indexThings(data) {
  const index = { byKey: new Map(), byName: new Map(), conductorOf: new Map(), wiresAt: new Map(), netsAt: new Map(), purposeOf: new Map() };
  data.purposes.forEach(p => index.purposeOf.set(p.name, p.words));
  (data.conductors ?? []).forEach((c, i) => c.terminals.forEach(t => index.conductorOf.set(t, i)));
  for (const part of data.parts) {
    addThing(index, 'part', part.name, part);
    part.terminals.forEach(t => addThing(index, 'terminal', t, { name: t, part: part.name }));
  }
  for (const wire of data.wires) {
    addThing(index, 'wire', wire.name, wire);
    [wire.from, wire.to].forEach(t => listAt(index.wiresAt, t).push(wire.name));
  }
  data.cables.forEach(c => addThing(index, 'cable', c.name, c));
  data.variables.filter(v => v.kind === 'actuator').forEach(v => addThing(index, 'actuator', v.name, v));
  for (const net of data.nets) {
    addThing(index, 'net', net.name, net);
    net.terminals.forEach(t => listAt(index.netsAt, t).push(net.name));
  }
  return index;
}

/** The first kind that has a name keeps it where a mark tells the name alone. */
function addThing(index, kind, name, facts) {
  const thing = { key: `${kind} ${name}`, kind, name, facts };
  if (!index.byKey.has(thing.key)) index.byKey.set(thing.key, thing);
  if (!index.byName.has(name)) index.byName.set(name, thing);
}

function listAt(map, key) {
  if (!map.has(key)) map.set(key, []);
  return map.get(key);
}

/** The terminals that a thing stands on. */
function terminalsOf(thing) {
  switch (thing.kind) {
    case 'terminal': return [thing.name];
    case 'wire': return [thing.facts.from, thing.facts.to];
    case 'part': case 'net': return thing.facts.terminals;
    default: return [];
  }
}

/** The one conductor that a wire, a terminal or a net is part of; undefined for other things and where it is more than one. */
function conductorOfThing(index, thing) {
  if (thing.kind === 'part' && thing.facts.terminals.length !== 1) return undefined;
  const all = new Set(terminalsOf(thing).map(t => index.conductorOf.get(t)).filter(c => c !== undefined));
  return all.size === 1 ? [...all][0] : undefined;
}

/** What a thing is called when it is read out: short. */
function spokenName(thing) {
  const words = { part: thing.facts.words || thing.facts.kind, actuator: thing.facts.words, wire: wireWords(thing.facts) }[thing.kind];
  return [`${KIND_WORDS[thing.kind]} ${thing.name}`, words].filter(w => w).join(', ');
}

function wireWords(wire) {
  return [wire.colour, wire.gauge].filter(w => w).join(' ');
}

/** Rows of facts: a heading, and texts of which those that name a thing can be chosen. */
function factsOf(index, thing) {
  const { facts } = thing;
  switch (thing.kind) {
    case 'wire': return [
      ['Ends', [facts.from, facts.to]], ['Colour', facts.colour || 'not stated'], ['Gauge', facts.gauge || 'not stated'],
      ['Length', facts.lengthMm === undefined ? 'not stated' : `${facts.lengthMm} mm`],
      ['Cable', facts.cable ? [facts.cable, facts.core && `core ${facts.core}`] : ''],
      ['Net', netsOn(index, [facts.from, facts.to])],
    ];
    case 'terminal': return [
      ['Part', [facts.part]], ['For', index.purposeOf.get(thing.name) ?? ''],
      ['Wires', index.wiresAt.get(thing.name) ?? []], ['Net', netsOn(index, [thing.name])],
    ];
    case 'part': return [['What', facts.kind], ['For', facts.words], ['Contacts', facts.terminals]];
    case 'net': return [['Joins', facts.terminals], ['Wires', wiresOn(index, facts.terminals)]];
    case 'cable': return [['What', facts.words]];
    case 'actuator': return [['For', facts.words], ['Positions', facts.values.join(', ')]];
    default: return [];
  }
}

function netsOn(index, terminals) {
  return [...new Set(terminals.flatMap(t => index.netsAt.get(t) ?? []))];
}

function wiresOn(index, terminals) {
  return [...new Set(terminals.flatMap(t => index.wiresAt.get(t) ?? []))];
}

/** Things whose name, or what they are for, has the words typed; names that begin with them first. */
function findThings(index, typed, most) {
  const wanted = typed.trim().toLowerCase();
  if (wanted === '') return [];
  const rank = thing => {
    const name = thing.name.toLowerCase();
    if (name === wanted) return 0;
    if (name.startsWith(wanted)) return 1;
    if (name.includes(wanted)) return 2;
    return `${thing.facts.words ?? ''} ${thing.facts.kind ?? ''} ${thing.facts.colour ?? ''}`.toLowerCase().includes(wanted) ? 3 : 4;
  };
  return [...index.byKey.values()].map(thing => ({ thing, rank: rank(thing) })).filter(r => r.rank < 4)
    .sort((a, b) => a.rank - b.rank || a.thing.name.localeCompare(b.thing.name, 'en', { numeric: true }))
    .slice(0, most).map(r => r.thing);
}
