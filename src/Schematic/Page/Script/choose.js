// Choosing a thing: it lights everywhere and tells what it is.

/** A tap moves an actuator and chooses everything. */
function tapThing(page, thing) {
  choose(page, thing);
  if (thing.kind === 'actuator' && page.data.canBeOperated) stepActuator(page, thing.name);
}

function choose(page, thing) {
  page.chosen = thing;
  paintChosen(page);
  tellChosen(page);
  if (!thing) return;
  say(page, spokenFacts(page, thing));
  if (!byId('folded').hidden) bringIntoPanel(byId('chosen-box'));
}

/** What is chosen in one sentence, for those who listen and for a panel that is folded. */
function spokenFacts(page, thing) {
  const { from, to, lengthMm } = thing.facts;
  const more = thing.kind === 'wire' ? `from ${from} to ${to}${lengthMm === undefined ? '' : `, ${lengthMm} mm`}` : page.index.purposeOf.get(thing.name);
  return [spokenName(thing), more, nowOf(page, thing)].filter(w => w).join('; ') + '.';
}

/** Scrolls the panel alone, and only as far as it must. */
function bringIntoPanel(box) {
  const panel = byId('operate');
  const [seen, wanted] = [panel.getBoundingClientRect(), box.getBoundingClientRect()];
  const below = wanted.bottom - seen.bottom;
  if (below > 0) panel.scrollTop += Math.min(below, wanted.top - seen.top - byId('grip').offsetHeight);
}

/** Lights the chosen thing, and fainter all that is joined to it without a switch. */
function paintChosen(page) {
  document.querySelectorAll('.halos').forEach(h => h.replaceChildren());
  document.querySelectorAll('[data-lit]').forEach(e => delete e.dataset.lit);
  document.querySelectorAll('g[aria-pressed], .name[aria-pressed]').forEach(e => e.removeAttribute('aria-pressed'));
  if (!page.chosen) return;
  joinedTo(page, page.chosen).forEach(thing => light(page, thing, 'joined'));
  light(page, page.chosen, 'chosen');
  if (page.chosen.kind === 'part') page.chosen.facts.terminals.map(t => page.index.byKey.get(`terminal ${t}`)).forEach(t => t && light(page, t, 'chosen'));
}

function joinedTo(page, thing) {
  const conductor = conductorOfThing(page.index, thing);
  if (conductor === undefined) return [];
  const terminals = new Set(page.data.conductors[conductor].terminals);
  return [...page.index.byKey.values()].filter(t => t.key !== thing.key && ['terminal', 'wire', 'net'].includes(t.kind)
    && terminalsOf(t).length > 0 && terminalsOf(t).every(x => terminals.has(x)));
}

function light(page, thing, how) {
  for (const mark of page.marks.get(thing.key) ?? []) {
    mark.dataset.lit = how;
    const halos = mark.closest('svg').querySelector('.halos');
    for (const width of how === 'chosen' ? ['rim', 'glow'] : ['glow']) {
      halos.append(makeSvg('g', { class: `halo ${how} ${width}` }, ...[...mark.children].filter(c => !c.closest('.badge') && !c.matches('.position')).map(haloOf)));
    }
    if (how === 'chosen' && mark.dataset.key === thing.key) mark.setAttribute('aria-pressed', 'true');
  }
  for (const name of page.names.get(thing.key) ?? []) {
    name.dataset.lit = how;
    if (how === 'chosen') name.setAttribute('aria-pressed', 'true');
  }
}

function haloOf(mark) {
  const halo = mark.cloneNode(true);
  ['stroke', 'stroke-width', 'stroke-dasharray', 'fill', 'id'].forEach(a => halo.removeAttribute(a));
  return halo;
}

/** Tells the chosen thing in the panel: facts, how it stands now, where it is shown. */
function tellChosen(page) {
  const box = byId('chosen');
  box.replaceChildren();
  if (!page.chosen) {
    box.append(make('p', { class: 'hint' }, 'Tap a wire, a contact or a name on any drawing or list, or find it above.'));
    return;
  }
  const thing = page.chosen;
  const list = make('dl');
  for (const [heading, told] of factsOf(page.index, thing)) addFact(page, list, heading, told);
  addFact(page, list, 'Now', nowOf(page, thing));
  addFact(page, list, 'Joined to', joinedTo(page, thing).filter(t => t.kind === 'terminal').map(t => t.name));
  box.append(make('h3', {}, `${KIND_WORDS[thing.kind]} ${thing.name}`), list, placesList(page, thing));
}

function addFact(page, list, heading, told) {
  const parts = (Array.isArray(told) ? told : [told]).filter(t => t);
  if (parts.length === 0) return;
  const cell = make('dd');
  parts.forEach((part, i) => cell.append(i > 0 ? ' ' : '', namedOrText(page, part)));
  list.append(make('dt', {}, heading), cell);
}

function namedOrText(page, text) {
  const thing = page.index.byName.get(text);
  return thing && thing !== page.chosen ? make('button', { type: 'button', class: 'link', click: () => choose(page, thing) }, text) : text;
}

const LINE_WORDS = {
  live: 'live: joined to a supply', return: 'joined to the return', behind: 'live through a load',
  dead: 'joined to no supply', shorted: 'shorted: joined to a supply and its return',
};

/** How a thing stands in the state that is shown. */
function nowOf(page, thing) {
  if (!page.data.canBeOperated) return '';
  const look = page.look;
  const load = page.data.loads.findIndex(l => thing.kind === 'part' && l.name === thing.name);
  if (load >= 0) return loadWords(page.data.loads[load], look.loads[load]);
  const input = page.data.inputs.findIndex(i => thing.kind === 'terminal' && i.name === thing.name);
  if (input >= 0) return inputWords(look.inputs[input]);
  if (thing.kind === 'actuator') return thing.facts.values[page.values[page.data.variables.indexOf(thing.facts)]];
  const conductor = conductorOfThing(page.index, thing);
  if (conductor === undefined) return '';
  const { line, volts, swing } = look.conductors[conductor];
  const measured = typeof swing === 'number' ? `between ${volts.toFixed(1)} V and ${swing.toFixed(1)} V against ${page.data.reference}, swinging with its supply`
    : typeof volts === 'number' ? `${volts.toFixed(1)} V against ${page.data.reference}` : volts === null ? 'no voltage defined' : '';
  return [LINE_WORDS[line], measured].filter(w => w).join('; ');
}

function loadWords(load, shown) {
  const volts = typeof shown.volts === 'number' ? `, ${Math.abs(shown.volts).toFixed(1)} V` : '';
  return (shown.on ? load.onWord : shown.open ? 'not decided' : `not ${load.onWord}`) + volts;
}

function inputWords(shown) {
  const words = { low: 'reads low', high: 'reads high', floating: 'floats', neither: 'reads neither low nor high', undecided: 'not decided' };
  return words[shown.level] + (typeof shown.volts === 'number' ? `, ${shown.volts.toFixed(1)} V` : '');
}

/** Buttons that go to every place where a thing is shown. */
function placesList(page, thing) {
  const places = new Map();
  for (const element of [...(page.marks.get(thing.key) ?? []), ...(page.names.get(thing.key) ?? [])]) {
    const holder = element.closest('[data-place]');
    if (holder && !places.has(holder)) places.set(holder, element);
  }
  if (places.size === 0) return make('p', { class: 'hint' }, 'It is drawn nowhere.');
  return make('div', { class: 'places' }, make('h4', {}, 'Shown on'),
    ...[...places].map(([holder, element]) => make('button', { type: 'button', click: () => goTo(holder, element, thing.key) }, holder.dataset.place)));
}

/** Brings a place into view, and the keyboard with it. */
function goTo(holder, element, key) {
  const hidden = element.closest('.side');
  if (hidden) showSide(holder, hidden.dataset.side);
  element.scrollIntoView({ block: 'center', inline: 'center' });
  const target = element.matches('[tabindex]') ? element : holder.querySelector(`[data-key="${CSS.escape(key)}"]`);
  target?.focus({ preventScroll: true });
}

/** Makes the names in lists into buttons. */
function prepareNames(page) {
  page.names = new Map();
  for (const table of document.querySelectorAll('#content table')) {
    const made = [];
    for (const cell of table.querySelectorAll('tbody td')) made.push(...nameCell(page, cell));
    rove(made);
  }
}

function nameCell(page, cell) {
  const words = cell.textContent.split(/([\s,;]+)/);
  if (!words.some(w => page.index.byName.has(w))) return [];
  const made = [];
  cell.replaceChildren(...words.map(word => {
    const thing = page.index.byName.get(word);
    if (!thing) return word;
    const button = make('button', { type: 'button', class: 'name', 'aria-label': spokenName(thing), click: () => choose(page, thing) }, word);
    listAt(page.names, thing.key).push(button);
    made.push(button);
    return button;
  }));
  return made;
}
