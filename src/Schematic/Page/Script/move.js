// Moves of a hand and what the relays do after them, as the compiler's data allows it.

const MOST_STATES_LOOKED_AT = 4000;

/** The moves of one variable from where it stands, possible or not. */
function movesOf(data, values, variable) {
  return data.moves.filter(m => m.v === variable && m.from === values[variable]);
}

function movesAt(data, values) {
  return data.moves.filter(m => m.from === values[m.v] && holds(data, m.when, values));
}

function withValue(values, variable, value) {
  const changed = values.slice();
  changed[variable] = value;
  return changed;
}

/** The locks that hold a variable where it stands. */
function locksHolding(data, values, variable) {
  return data.locks.filter(l => l.v === variable && l.at.includes(values[variable]) && !holds(data, l.mayBeFree, values));
}

/** The coils that are about to change, and those of which it is not decided. */
function pendingCoils(data, values) {
  return data.coils.filter(c => holds(data, c.leaves, values)).map(c => c.v);
}

function undecidedCoils(data, values) {
  return data.coils.filter(c => holds(data, c.changes, values) && !holds(data, c.leaves, values)).map(c => c.v);
}

function flipped(values, coil) {
  return withValue(values, coil, 1 - values[coil]);
}

/** Lets the relays settle, one at a time, the first that is about to change each time; `rests` is false where they never do. */
function settled(data, values) {
  const seen = new Set();
  let at = values;
  for (let pending = pendingCoils(data, at); pending.length > 0; pending = pendingCoils(data, at)) {
    const key = at.join();
    if (seen.has(key)) return { values: at, rests: false };
    seen.add(key);
    at = flipped(at, pending[0]);
  }
  return { values: at, rests: true };
}

/**
 * The shortest moves after which `isGoal` holds, relays settling between; null when there are none among the states looked at.
 */
function wayTo(data, start, isGoal) {
  const came = new Map([[start.join(), null]]);
  const waiting = [start];
  for (let i = 0; i < waiting.length && i < MOST_STATES_LOOKED_AT; i++) {
    if (isGoal(waiting[i])) return movesBackFrom(waiting[i], came);
    for (const move of movesAt(data, waiting[i])) {
      const next = settled(data, withValue(waiting[i], move.v, move.to));
      if (!next.rests || came.has(next.values.join())) continue;
      came.set(next.values.join(), { move, before: waiting[i] });
      waiting.push(next.values);
    }
  }
  return null;
}

function movesBackFrom(state, came) {
  const moves = [];
  for (let step = came.get(state.join()); step; step = came.get(step.before.join())) moves.unshift(step.move);
  return moves;
}

/** A move in words. */
function moveWords(data, move) {
  const { name, values, kind } = data.variables[move.v];
  if (kind === 'supply') return `switch ${name} ${values[move.to]}`;
  if (kind === 'value') return `bring ${name} to ${values[move.to]}`;
  if (move.kind === 'wait') return `wait until the delay of ${name} is over`;
  if (move.kind === 'letgo') return `let ${name} go`;
  if (data.variables[move.v].pushToTurn) return `push ${name} and turn it to ${values[move.to]}`;
  return move.kind === 'hold' ? `hold ${name} at ${values[move.to]}` : `move ${name} to ${values[move.to]}`;
}

/** Why a variable cannot leave its place, and what would release it. */
function refusalWords(data, values, variable) {
  const { name, values: places } = data.variables[variable];
  const locks = locksHolding(data, values, variable);
  if (locks.length === 0) return `${name} cannot be moved there from ${places[values[variable]]}.`;
  const held = `${name} is locked at ${places[values[variable]]}: the lock holds it until ${locks.map(l => l.until).join(' and until ')}.`;
  const way = wayTo(data, values, state =>
    state[variable] === values[variable] && locks.every(l => holds(data, l.free, state)));
  if (!way) return `${held} No moves from here release it.`;
  return `${held} To release it: ${way.map(m => moveWords(data, m)).join(', then ')}.`;
}

/** The neighbouring places on the way of a variable from where it stands to another, by the moves that the data has; null for none. */
function placesTo(data, variable, from, to) {
  const came = new Map([[from, null]]);
  const waiting = [from];
  for (let i = 0; i < waiting.length && !came.has(to); i++) {
    for (const move of data.moves.filter(m => m.v === variable && m.from === waiting[i] && !came.has(m.to))) {
      came.set(move.to, move);
      waiting.push(move.to);
    }
  }
  if (!came.has(to)) return null;
  const moves = [];
  for (let step = came.get(to); step; step = came.get(step.from)) moves.unshift(step);
  return moves;
}
