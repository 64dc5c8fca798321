// The panel at the side: actuators, supplies, relays, and what works at the moment.

const SETTLE_MS = 450;

/** Moves an actuator or a supply to a place, neighbour by neighbour; says why where it cannot. */
function moveTo(page, variable, place) {
  const way = placesTo(page.data, variable, page.values[variable], place);
  if (!way) return;
  finishSettling(page);
  walk(page, variable, way);
}

function walk(page, variable, way) {
  const [move, ...rest] = way;
  if (!move) return;
  if (!holds(page.data, move.when, page.values)) {
    say(page, refusalWords(page.data, page.values, variable), 'refused');
    paint(page);
    return;
  }
  page.values = withValue(page.values, variable, move.to);
  page.heading[variable] = Math.sign(move.to - move.from) || 1;
  say(page, sentence(doneWords(page, move)));
  settleOn(page, () => walk(page, variable, rest));
}

function doneWords(page, move) {
  const { name, values, kind } = page.data.variables[move.v];
  if (kind === 'supply' || kind === 'value') return `${name} is ${values[move.to]}`;
  if (move.kind === 'wait') return `the delay of ${name} is over: its delayed contacts are ${values[move.to]}`;
  if (move.kind === 'letgo') return `${name} springs back to ${values[move.to]}`;
  if (page.data.variables[move.v].pushToTurn) return `${name} is pushed, turned and ${move.kind === 'hold' ? 'held at' : 'stands at'} ${values[move.to]}`;
  return `${name} ${move.kind === 'hold' ? 'is held at' : 'stands at'} ${values[move.to]}`;
}

function sentence(words) {
  return words.charAt(0).toUpperCase() + words.slice(1) + '.';
}

/** A tap on an actuator's symbol: one place on, back from the end, let go where it is held. */
function stepActuator(page, name) {
  const variable = page.data.variables.findIndex(v => v.kind === 'actuator' && v.name === name);
  const here = page.values[variable];
  const back = page.data.variables[variable].springsTo[here];
  const moves = movesOf(page.data, page.values, variable);
  const ahead = moves.find(m => Math.sign(m.to - m.from) === (page.heading[variable] ?? 1));
  const next = back >= 0 ? back : (ahead ?? moves[0])?.to;
  if (next !== undefined) moveTo(page, variable, next);
}

// Relays.

/** Lets the relays settle, one step after the other, then goes on; waits for the reader where each step is pressed by hand. */
function settleOn(page, after) {
  paint(page);
  const pending = pendingCoils(page.data, page.values);
  if (pending.length === 0) {
    page.settling = null;
    tellUndecided(page);
    showPending(page);
    after();
    return;
  }
  if (!page.settling) page.settling = { seen: new Set(), after };
  page.settling.after = after;
  const key = page.values.join();
  if (page.settling.seen.has(key)) {
    say(page, `${namesOf(page, pending)} never ${pending.length === 1 ? 'comes' : 'come'} to rest: chatter.`, 'refused');
    page.settling = null;
    showPending(page, pending);
    return;
  }
  page.settling.seen.add(key);
  showPending(page, pending);
  if (!page.byHand) page.timer = setTimeout(() => settleStep(page, pending[0]), page.settleMs);
}

function settleStep(page, coil) {
  clearTimeout(page.timer);
  page.values = flipped(page.values, coil);
  say(page, sentence(coilWords(page, coil, page.values[coil])));
  settleOn(page, page.settling?.after ?? (() => {}));
}

/** Whatever is settling is settled at once, so that the next move begins at rest. */
function finishSettling(page) {
  clearTimeout(page.timer);
  page.settling = null;
  page.values = settled(page.data, page.values).values;
  showPending(page);
}

function tellUndecided(page) {
  const open = undecidedCoils(page.data, page.values);
  if (open.length > 0) say(page, `Whether ${namesOf(page, open)} ${open.length === 1 ? 'changes' : 'change'} here is not decided.`, 'refused');
}

function namesOf(page, coils) {
  return coils.map(c => page.data.variables[c].name).join(' and ');
}

function showPending(page, pending = []) {
  const box = byId('pending');
  if (!box) return;
  const isWaiting = page.byHand && page.settling && pending.length > 0;
  box.replaceChildren(...(isWaiting ? pending.map(c => {
    const next = coilWords(page, c, 1 - page.values[c]).replace(/ (is|are) /, ' ');
    return make('button', { type: 'button', class: 'pending', click: () => settleStep(page, c) }, `Next: ${next}`);
  }) : []));
}

function coilWords(page, coil, value) {
  const { name, values, kind } = page.data.variables[coil];
  return kind === 'delay' ? `the delayed contacts of ${name} are ${values[value]}` : `${name} is ${values[value]}`;
}

/** Buttons that let the delays end that run at the moment. */
function showWaits(page) {
  byId('waits').replaceChildren(...movesAt(page.data, page.values).filter(m => m.kind === 'wait').map(move => make('button', {
    type: 'button', class: 'pending', click: () => moveTo(page, move.v, move.to),
  }, sentence(moveWords(page.data, move)).slice(0, -1))));
}

function toRest(page) {
  finishSettling(page);
  page.values = page.data.rest.slice();
  page.heading = {};
  say(page, 'Everything is at rest.');
  paint(page);
}

function say(page, words, how = '') {
  const box = byId('said');
  box.textContent = words;
  box.className = how;
}

// The panel itself.

function buildPanel(page) {
  byId('operate').replaceChildren(
    make('div', { id: 'grip' },
      make('button', { type: 'button', id: 'fold', 'aria-expanded': 'true', 'aria-controls': 'folded', click: () => foldPanel() }, 'Controls'),
      make('p', { id: 'said', role: 'status' })),
    make('div', { id: 'folded' },
      searchBox(page),
      page.data.canBeOperated ? controls(page) : '',
      make('section', { id: 'chosen-box', 'aria-labelledby': 'chosen-heading' }, make('h2', { id: 'chosen-heading' }, 'Chosen'), make('div', { id: 'chosen' })),
      page.data.canBeOperated ? workingBox() : '',
      page.data.leftOut.length > 0 ? make('details', { id: 'left-out' }, make('summary', {}, 'What this page leaves out'),
        make('ul', {}, ...page.data.leftOut.map(l => make('li', {}, l)))) : ''));
}

/** On a narrow screen the panel begins folded, so that the drawing is seen. */
function foldPanel(isFolded = !byId('folded').hidden) {
  byId('fold').setAttribute('aria-expanded', String(!isFolded));
  byId('folded').hidden = isFolded;
}

function controls(page) {
  const { variables } = page.data;
  const movable = variables.map((v, i) => ({ v, i })).filter(p => ['actuator', 'supply', 'value'].includes(p.v.kind));
  const unknown = variables.map((v, i) => ({ v, i })).filter(p => p.v.kind === 'unknown');
  return make('section', { id: 'controls', 'aria-labelledby': 'controls-heading' },
    make('h2', { id: 'controls-heading' }, 'Operate'),
    ...movable.map(p => placesBox(page, p.v, p.i)),
    make('div', { class: 'row' },
      make('button', { type: 'button', id: 'rest', click: () => toRest(page) }, 'Back to rest'),
      page.data.coils.length > 0 ? handBox(page) : ''),
    make('div', { id: 'pending' }),
    make('div', { id: 'waits' }),
    unknown.length > 0 ? unknownBox(page, unknown) : '');
}

function workingBox() {
  return make('section', { id: 'working', 'aria-labelledby': 'working-heading' },
    make('h2', { id: 'working-heading' }, 'What works now'), make('ul', { id: 'loads' }), make('ul', { id: 'levels' }));
}

function placesBox(page, variable, index) {
  return make('fieldset', {},
    make('legend', {}, make('b', {}, variable.name), variable.words ? ` ${variable.words}` : '', variable.pushToTurn ? make('small', {}, ' push to turn') : ''),
    make('div', { class: 'positions' }, ...variable.values.map((name, place) => make('button', {
      type: 'button', 'data-variable': index, 'data-place-number': place, 'aria-pressed': 'false', click: () => pressPlace(page, index, place),
    }, name, (variable.springsTo?.[place] ?? -1) >= 0 ? make('small', {}, ' hold') : ''))));
}

/** Pressing the place where a sprung actuator is held lets it go. */
function pressPlace(page, variable, place) {
  const back = page.data.variables[variable].springsTo?.[place] ?? -1;
  moveTo(page, variable, place === page.values[variable] && back >= 0 ? back : place);
}

function handBox(page) {
  return make('label', {}, make('input', { type: 'checkbox', id: 'by-hand', change: event => {
    page.byHand = event.target.checked;
    finishSettling(page);
    paint(page);
  } }), ' relays step by step');
}

function unknownBox(page, unknown) {
  return make('fieldset', { class: 'unknown' }, make('legend', {}, 'Not known: suppose that'),
    ...unknown.map(({ v, i }) => make('label', {}, `${v.name}: `, make('select', { change: event => {
      page.values = withValue(page.values, i, Number(event.target.value));
      say(page, `Supposed: ${v.name}, ${v.values[page.values[i]]}.`);
      settleOn(page, () => {});
    } }, ...v.values.map((name, n) => make('option', { value: n, selected: n === page.values[i] }, name))))));
}

/** Shows the state: buttons, lists and drawings. */
function paint(page) {
  if (!page.data.canBeOperated) return;
  page.look = lookAt(page.data, page.values);
  for (const button of document.querySelectorAll('[data-variable]')) paintPlace(page, button);
  byId('loads').replaceChildren(...page.data.loads.map((l, i) => stateRow(page, `part ${l.name}`, l.words, loadWords(l, page.look.loads[i]), loadState(page.look.loads[i]))));
  byId('levels').replaceChildren(...page.data.inputs.map((input, i) => ({ input, shown: page.look.inputs[i] })).filter(p => p.input.wired)
    .map(({ input, shown }) => stateRow(page, `terminal ${input.name}`, input.words, inputWords(shown), shown.level)));
  showWaits(page);
  paintShort(page);
  paintDrawings(page, page.look);
  if (page.chosen) tellChosen(page);
}

function paintPlace(page, button) {
  const variable = Number(button.dataset.variable);
  const place = Number(button.dataset.placeNumber);
  const isHere = page.values[variable] === place;
  button.setAttribute('aria-pressed', String(isHere));
  const isLocked = isHere && locksHolding(page.data, page.values, variable).length > 0;
  button.toggleAttribute('data-locked', isLocked);
  button.setAttribute('aria-description', isLocked ? 'locked here' : '');
}

function stateRow(page, key, words, told, state) {
  const thing = page.index.byKey.get(key);
  return make('li', { 'data-state': state },
    make('span', { class: 'lamp', 'aria-hidden': 'true' }),
    make('button', { type: 'button', class: 'link', click: () => choose(page, thing) }, thing.name),
    make('span', { class: 'told' }, ` ${told}`), words ? make('small', {}, words) : '');
}

function paintShort(page) {
  document.body.toggleAttribute('data-shorted', page.look.shorted.length > 0);
  if (page.look.shorted.length > 0) say(page, `${page.look.shorted.join(' and ')} ${page.look.shorted.length === 1 ? 'is' : 'are'} shorted: nothing works here.`, 'refused');
}
