// The drawings: which marks show which thing, how they are lit, and how contacts stand.

const TOUCH_MM = 4;
const BLADE_MM = 2.5;

/** Finds out what the marks of all drawings show. Called once for each content. */
function prepareDrawings(page) {
  page.marks = new Map();
  page.places = new Map();
  page.wireMarks = [];
  page.poles = [];
  for (const svg of document.querySelectorAll('#content svg')) prepareDrawing(page, svg);
}

function prepareDrawing(page, svg) {
  const isFace = svg.closest('.face') !== null;
  svg.prepend(makeSvg('g', { class: 'halos', 'aria-hidden': 'true' }));
  for (const group of svg.querySelectorAll('g[data-role]')) {
    group.setAttribute('aria-hidden', 'true');
    const things = thingsShown(page, group);
    things.forEach(thing => listAt(page.marks, thing.key).push(group));
    if (['wire', 'junction'].includes(group.dataset.role)) page.wireMarks.push({ group, conductor: conductorShown(page, things) });
    if (group.dataset.pole && !isFace) page.poles.push(readPole(group));
  }
  makeReachable(page, svg);
  svg.addEventListener('click', event => tapDrawing(page, svg, event));
}

/** The things of a mark: what it says it shows first, then its owners. */
function thingsShown(page, group) {
  const shown = new Map();
  const said = page.index.byKey.get(group.dataset.thing);
  if (said) shown.set(said.key, said);
  for (const word of (group.dataset.owner ?? '').split(' ')) {
    const thing = page.index.byName.get(word);
    if (thing) shown.set(thing.key, thing);
  }
  return [...shown.values()];
}

function conductorShown(page, things) {
  const terminal = things.find(t => t.kind === 'terminal');
  return terminal ? page.index.conductorOf.get(terminal.name) : undefined;
}

/** Each thing of a drawing gets one mark that the keyboard reaches and a reader names: its lettering, or else its first mark. */
function makeReachable(page, svg) {
  const first = new Map();
  for (const group of svg.querySelectorAll('g[data-role]')) {
    const [thing] = thingsShown(page, group);
    if (!thing) continue;
    const old = first.get(thing.key);
    if (!old || (old.group.dataset.role !== 'label' && group.dataset.role === 'label')) first.set(thing.key, { thing, group });
  }
  const reached = [...first.values()];
  for (const { thing, group } of reached) {
    group.removeAttribute('aria-hidden');
    group.setAttribute('role', 'button');
    group.setAttribute('aria-label', spokenMark(thing, group));
    group.dataset.key = thing.key;
    group.addEventListener('keydown', event => {
      if (event.key !== 'Enter' && event.key !== ' ') return;
      event.preventDefault();
      tapThing(page, thing);
    });
  }
  rove(reached.map(r => r.group));
}

/** What a mark is called when it is read out: the thing, and whatever is lettered there besides, so that what is seen can be said. */
function spokenMark(thing, group) {
  const name = spokenName(thing);
  const written = [...group.querySelectorAll('text')].map(t => t.textContent);
  return name.includes(written.join(' ')) ? name : [`${KIND_WORDS[thing.kind]} ${thing.name}`, ...written.slice(written[0] === thing.name ? 1 : 0)].join(', ');
}

function tapDrawing(page, svg, event) {
  const thing = thingAt(page, svg, event);
  if (thing) tapThing(page, thing);
  else choose(page, null);
}

/** The thing under a finger: the mark that was met, or the nearest within a finger's width. */
function thingAt(page, svg, event) {
  const met = event.target.closest('g[data-role]');
  const [thing] = met ? thingsShown(page, met) : [];
  if (thing) return thing;
  const matrix = svg.getScreenCTM();
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
  const reach = Math.max(TOUCH_MM, 12 / matrix.a);
  let nearest = null;
  let least = reach;
  for (const group of svg.querySelectorAll('g[data-role]')) {
    const [candidate] = thingsShown(page, group);
    if (!candidate) continue;
    const distance = distanceTo(group, at);
    if (distance < least) [nearest, least] = [candidate, distance];
  }
  return nearest;
}

function distanceTo(group, at) {
  let least = Infinity;
  for (const mark of group.children) {
    if (mark.tagName !== 'path') {
      const box = mark.getBBox();
      least = Math.min(least, Math.hypot(beyond(at.x, box.x, box.x + box.width), beyond(at.y, box.y, box.y + box.height)));
      continue;
    }
    const points = pointsOf(mark);
    for (let i = 1; i < points.length; i++) least = Math.min(least, distanceToStroke(at, points[i - 1], points[i]));
  }
  return least;
}

function beyond(value, from, to) {
  return Math.max(from - value, 0, value - to);
}

function distanceToStroke(at, from, to) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = dx * dx + dy * dy;
  const share = length === 0 ? 0 : Math.min(1, Math.max(0, ((at.x - from[0]) * dx + (at.y - from[1]) * dy) / length));
  return Math.hypot(at.x - from[0] - share * dx, at.y - from[1] - share * dy);
}

/** The corners of a straight path. */
function pointsOf(path) {
  const numbers = (path.getAttribute('d').match(/-?[0-9.]+/g) ?? []).map(Number);
  const points = [];
  for (let i = 0; i + 1 < numbers.length; i += 2) points.push([numbers[i], numbers[i + 1]]);
  return points;
}

// Contacts.

/**
 * A drawn contact set: where its throws meet the symbol, and the stroke that is its blade. The common's place is the one from which
 * all throws lie as told.
 */
function readPole(group) {
  const strokes = [...group.querySelectorAll('path')].map(path => ({ path, points: pointsOf(path) }));
  const ends = strokes.flatMap(s => s.points);
  const offsets = group.dataset.throws.split(';').filter(t => t).map(text => text.split(' ')).map(([terminal, x, y]) => ({ terminal, by: [Number(x), Number(y)] }));
  const common = ends.find(e => offsets.every(o => ends.some(other => isSamePlace(other, plus(e, o.by)))));
  if (!common) return { throws: [] };
  const throws = offsets.map(o => ({ terminal: o.terminal, at: plus(common, o.by) }));
  const along = direction(offsets);
  const pivot = plus(common, along.map(v => BLADE_MM * v));
  const drawn = strokes.find(s => s.points.length > 1 && isSamePlace(s.points[s.points.length - 2], pivot));
  if (!drawn) return { throws: [] };
  const open = drawn.points[drawn.points.length - 1];
  const blade = makeSvg('path', { class: 'blade' });
  drawn.path.setAttribute('d', pathThrough(drawn.points.slice(0, -1)));
  drawn.path.after(blade);
  // The fixed end of a break contact has a bar on the side of the blade: open, the blade stands on the other side.
  const isBreak = throws.length === 1 && strokes.some(s => s !== drawn && s.points.length > 2);
  return { group, common: group.dataset.pole, throws, along, pivot, open, isBreak, blade };
}

function plus(place, by) {
  return [place[0] + by[0], place[1] + by[1]];
}

function isSamePlace(one, other) {
  return Math.hypot(one[0] - other[0], one[1] - other[1]) < 0.01;
}

/** The way from the common to the throws, a unit along the axis on which all of them are equally far. */
function direction(offsets) {
  const axis = [0, 1].find(i => Math.abs(offsets[0].by[i]) > BLADE_MM && offsets.every(o => o.by[i] === offsets[0].by[i])) ?? 0;
  return [0, 1].map(i => i === axis ? Math.sign(offsets[0].by[i]) : 0);
}

function pathThrough(points) {
  return points.length < 2 ? 'M0 0' : `M${points.map(p => p.join(' ')).join('L')}`;
}

/** Where a blade's tip lies: on the throw that is closed, or off all of them. */
function tipOf(pole, closed) {
  const { along, open } = pole;
  if (closed) return plus(closed.at, along.map(v => -BLADE_MM * v));
  if (pole.isBreak) return [0, 1].map(i => along[i] === 0 ? 2 * pole.pivot[i] - open[i] : open[i]);
  if (pole.throws.length === 1 || !isDrawnOnThrow(pole)) return open;
  return [0, 1].map(i => pole.throws.reduce((sum, t) => sum + t.at[i] / pole.throws.length, 0) - BLADE_MM * along[i]);
}

/** Whether the blade was drawn on one of several throws. */
function isDrawnOnThrow(pole) {
  return pole.throws.some(t => Math.hypot(...[0, 1].map(i => t.at[i] - (BLADE_MM - 0.3) * pole.along[i] - pole.open[i])) < 1.3);
}

// Lighting.

/** Shows a state on all drawings. */
function paintDrawings(page, look) {
  for (const { group, conductor } of page.wireMarks) setState(group, conductor === undefined ? '' : look.conductors[conductor].line);
  for (const pole of page.poles) paintPole(page, pole, look);
  page.data.loads.forEach((load, i) => paintSymbols(page, `part ${load.name}`, loadState(look.loads[i])));
  page.data.inputs.forEach((input, i) => paintInput(page, input, look.inputs[i]));
  page.data.variables.filter(v => v.kind === 'actuator').forEach(v => paintActuator(page, v));
}

function setState(group, state) {
  if (state) group.dataset.state = state;
  else delete group.dataset.state;
}

function loadState(load) {
  return load.on ? 'on' : load.open ? 'undecided' : '';
}

function paintPole(page, pole, look) {
  if (pole.throws.length === 0) return;
  const closed = pole.throws.find(t => page.contactOf.has(`${pole.common} ${t.terminal}`)
    && look.contacts[page.contactOf.get(`${pole.common} ${t.terminal}`)]);
  const tip = tipOf(pole, closed);
  pole.blade.setAttribute('d', pathThrough([pole.pivot, tip]));
  pole.blade.dataset.state = closed ? 'closed' : 'open';
}

function symbolsOf(page, key) {
  return (page.marks.get(key) ?? []).filter(g => g.dataset.role === 'symbol' && !g.dataset.pole);
}

function paintSymbols(page, key, state) {
  symbolsOf(page, key).forEach(group => setState(group, state));
}

const LEVEL_LETTERS = { low: 'L', high: 'H', floating: '~', neither: '?', undecided: '?' };

function paintInput(page, input, shown) {
  for (const group of symbolsOf(page, `terminal ${input.name}`)) {
    setState(group, input.wired ? shown.level : '');
    if (input.wired) group.querySelector('.badge').lastChild.textContent = LEVEL_LETTERS[shown.level];
  }
}

function paintActuator(page, variable) {
  const at = variable.values[page.values[page.data.variables.indexOf(variable)]];
  for (const group of symbolsOf(page, `actuator ${variable.name}`)) group.querySelector('.position').textContent = at;
}

/**
 * Makes room on the symbols for what a state letters there. Everything is measured before anything is drawn, and once: a page that is
 * measured after each change is laid out as often.
 */
function prepareLettering(page) {
  const inputs = page.data.inputs.filter(i => i.wired).flatMap(i => symbolsOf(page, `terminal ${i.name}`));
  const actuators = page.data.variables.filter(v => v.kind === 'actuator').flatMap(variable => symbolsOf(page, `actuator ${variable.name}`).map(group => ({ group, variable })));
  const drawings = new Set(actuators.map(a => a.group.closest('svg')));
  const taken = new Map([...drawings].map(svg => [svg, [...svg.querySelectorAll('text')].map(t => t.getBBox())]));
  const boxes = new Map([...inputs, ...actuators.map(a => a.group)].map(group => [group, group.getBBox()]));
  for (const group of inputs) {
    const badge = addBadge(group, boxes.get(group));
    taken.get(group.closest('svg'))?.push(badge);
  }
  const texts = actuators.map(({ group, variable }) => addPosition(group, variable));
  const sizes = texts.map(text => text.getBBox());
  actuators.forEach(({ group }, i) => placeText(texts[i], sizes[i], boxes.get(group), taken.get(group.closest('svg'))));
}

/** A small disc with a letter on the right of a symbol; returns the room that it takes. */
function addBadge(group, box) {
  const at = { x: box.x + box.width + 1.9, y: box.y + box.height / 2 };
  group.append(makeSvg('g', { class: 'badge' },
    makeSvg('circle', { cx: at.x, cy: at.y, r: 1.7 }),
    makeSvg('text', { x: at.x, y: at.y + 0.95, 'text-anchor': 'middle', 'font-size': 2.7 })));
  return { x: at.x - 1.7, y: at.y - 1.7, width: 3.4, height: 3.4 };
}

/** The lettering of an actuator's position, as long as it can get, at the drawing's corner. */
function addPosition(group, variable) {
  const text = makeSvg('text', { class: 'position', 'text-anchor': 'end', 'font-size': 3.2 });
  text.textContent = variable.values.reduce((a, b) => a.length >= b.length ? a : b);
  group.append(text);
  return text;
}

/** Puts it above its symbol, or left of it or below, where it covers the least. */
function placeText(text, size, box, taken) {
  const right = box.x + box.width;
  const choices = [[right, box.y - 0.8], [box.x - 0.8, box.y + 2], [box.x - 0.8, box.y + box.height], [right, box.y + box.height + 3.2]].map(([x, y]) => {
    const room = { x: size.x + x, y: size.y + y, width: size.width, height: size.height };
    return { x, y, room, covered: taken.reduce((sum, other) => sum + overlap(room, other), 0) };
  });
  const best = choices.reduce((a, b) => b.covered < a.covered - 0.01 ? b : a);
  text.setAttribute('x', best.x);
  text.setAttribute('y', best.y);
  taken.push(best.room);
}

function overlap(a, b) {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return width > 0 && height > 0 ? width * height : 0;
}
