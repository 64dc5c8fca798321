// The page as a whole: it begins at rest, and takes over the content of a page that was written anew.

const page = { values: [], heading: {}, chosen: null, zooms: {}, byHand: false, settleMs: SETTLE_MS };

function readData(root) {
  return JSON.parse(root.getElementById('panel-data').textContent);
}

/** Builds everything from the data and the content that stand in the document. */
function build(data, values) {
  page.data = data;
  page.index = indexThings(data);
  page.values = values;
  page.contactOf = new Map((data.contacts ?? []).map((c, i) => [`${c.common} ${c.throw}`, i]));
  buildPanel(page);
  buildRingOuts(page);
  prepareNavigation();
  prepareSheets(page);
  prepareFaces();
  prepareDrawings(page);
  prepareNames(page);
  if (data.canBeOperated) prepareLettering(page);
  paint(page);
  choose(page, page.chosen && page.index.byKey.get(page.chosen.key) || null);
}

/** The values of a new page: what has the same name and still has that position stays as it is. */
function carriedValues(data, old) {
  if (!data.canBeOperated) return data.rest;
  const carried = data.rest.slice();
  data.variables.forEach((variable, i) => {
    const before = old.data.variables.findIndex(v => v.kind === variable.kind && v.name === variable.name);
    const place = before < 0 ? -1 : variable.values.indexOf(old.data.variables[before].values[old.values[before]]);
    if (place >= 0) carried[i] = place;
  });
  return settled(data, carried).values;
}

/** Takes over the content of a page that was written anew; `text` is its whole HTML. Nothing in it is run. */
function replacePage(text) {
  // Its style is taken out first: the policy of this page does not know it, and would say so.
  const [style, rules] = text.match(/<style id="page-style">([^]*?)<\/style>/);
  const fresh = new DOMParser().parseFromString(text.replace(style, ''), 'text/html');
  const scroll = { left: window.scrollX, top: window.scrollY };
  const papers = new Map([...document.querySelectorAll('.sheet')].map(s => [s.id, s.querySelector('.paper')]).map(([id, p]) => [id, [p.scrollLeft, p.scrollTop]]));
  const sides = new Map([...document.querySelectorAll('.face')].map(f => [f.id, f.dataset.shows]));
  const typed = byId('find').value;
  const isFolded = byId('folded').hidden;
  const heights = new Map([...document.querySelectorAll('.list, .ring-out')].map(l => [l.dataset.place, l.getBoundingClientRect().height]));
  const data = readData(fresh);
  clearTimeout(page.timer);
  page.settling = null;
  document.title = fresh.title;
  takeFaces(rules);
  for (const id of ['title', 'content']) byId(id).replaceWith(document.adoptNode(fresh.getElementById(id)));
  for (const face of document.querySelectorAll('.face')) face.dataset.shows = sides.get(face.id) ?? 'rear';
  build(data, carriedValues(data, page));
  for (const sheet of document.querySelectorAll('.sheet')) [sheet.querySelector('.paper').scrollLeft, sheet.querySelector('.paper').scrollTop] = papers.get(sheet.id) ?? [0, 0];
  for (const list of document.querySelectorAll('.list, .ring-out')) if (heights.has(list.dataset.place)) list.style.containIntrinsicBlockSize = `${heights.get(list.dataset.place)}px`;
  byId('find').value = typed;
  foldPanel(isFolded);
  window.scrollTo(scroll);
}

/** The typeface holds the letters that its page uses; a new page may use others. */
function takeFaces(style) {
  const rules = [...byId('page-style').sheet.cssRules];
  rules.forEach((rule, i) => { if (rule instanceof CSSFontFaceRule) page.oldFaces = [...(page.oldFaces ?? []), rules[i]]; });
  for (const rule of style.match(/@font-face\{[^}]*\}/g) ?? []) byId('page-style').sheet.insertRule(rule, byId('page-style').sheet.cssRules.length);
  for (const old of page.oldFaces ?? []) {
    const at = [...byId('page-style').sheet.cssRules].indexOf(old);
    if (at >= 0) byId('page-style').sheet.deleteRule(at);
  }
  page.oldFaces = [];
}

/** What others may call; the README of the library's folder Page tells it. */
window.schematicPage = {
  replace: replacePage,
  get data() { return page.data; },
  get values() { return page.values.slice(); },
  /** Stands the page at a state, as if everything had settled there. */
  stand(values) {
    finishSettling(page);
    page.values = values.slice();
    paint(page);
  },
  lookAt: values => lookAt(page.data, values),
  movesAt: values => movesAt(page.data, values),
  pendingCoils: values => pendingCoils(page.data, values),
  settled: values => settled(page.data, values),
  /** How long each relay is shown on its way, in milliseconds. */
  set settleMs(ms) { page.settleMs = ms; },
};

{
  const data = readData(document);
  build(data, data.rest.slice());
  requestAnimationFrame(() => setTimeout(() => performance.mark('operable')));
  if (window.matchMedia('(max-width: 56rem)').matches) foldPanel(true);
  if (data.canBeOperated) say(page, 'Everything is at rest. Tap an actuator to move it.');
}
