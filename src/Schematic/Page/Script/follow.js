// Follows the compiler's decision diagrams. Nothing electrical is worked out here: every question is answered by walking from
// node to node until an end is met. A state is an array with a value for each of `data.variables`.

/** Whether a condition holds in a state. 0 and 1 are never and always; any other reference less two is a place in `data.nodes`. */
function holds(data, condition, values) {
  let at = condition;
  while (at > 1) at = data.nodes[at - 1 + values[data.nodes[at - 2]]];
  return at === 1;
}

/** The volts of the case that holds: null where nothing defines them, undefined where the compiler tells none. */
function voltsIn(data, cases, values) {
  return caseIn(data, cases, values)?.[1];
}

function caseIn(data, cases, values) {
  return cases.find(([when]) => holds(data, when, values));
}

function shortedSupplies(data, values) {
  return data.shorted.filter(s => holds(data, s.when, values)).map(s => s.name);
}

function loadIn(data, load, values) {
  return {
    on: holds(data, load.on, values),
    open: holds(data, load.open, values),
    volts: voltsIn(data, load.volts, values),
  };
}

/** What an input reads: low, high, neither, floating, or undecided; nothing is told while a supply is shorted. */
function inputIn(data, input, values, isShorted) {
  const volts = voltsIn(data, input.volts, values);
  const level = isShorted || holds(data, input.open, values) ? 'undecided'
    : holds(data, input.low, values) ? 'low'
    : holds(data, input.high, values) ? 'high'
    : volts === null ? 'floating' : 'neither';
  return { level, volts };
}

/** How a conductor stands: shorted, live (on a supply), return, behind (live through a load), or dead. */
function conductorIn(data, conductor, values) {
  const isLive = holds(data, conductor.live, values);
  const isReturn = holds(data, conductor.return, values);
  const line = isLive && isReturn ? 'shorted'
    : isLive ? 'live'
    : isReturn ? 'return'
    : holds(data, conductor.behind, values) ? 'behind' : 'dead';
  const [, volts, swing] = caseIn(data, conductor.volts, values) ?? [];
  return { line, volts, swing };
}

/** Everything that the compiler says of a state, in the order of the data. */
function lookAt(data, values) {
  const shorted = shortedSupplies(data, values);
  return {
    shorted,
    loads: data.loads.map(l => loadIn(data, l, values)),
    inputs: data.inputs.map(i => inputIn(data, i, values, shorted.length > 0)),
    contacts: data.contacts.map(c => holds(data, c.closed, values)),
    conductors: data.conductors.map(c => conductorIn(data, c, values)),
  };
}
