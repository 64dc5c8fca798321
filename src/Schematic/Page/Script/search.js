// Finding a thing by its name or by what it is for.

const MOST_FOUND = 12;

function searchBox(page) {
  return make('search', {},
    make('label', { for: 'find' }, 'Find a designator, contact, wire or net'),
    make('input', { type: 'search', id: 'find', autocomplete: 'off', spellcheck: 'false', 'aria-controls': 'found', input: () => showFound(page), keydown: event => leaveSearch(page, event) }),
    make('p', { id: 'found-count', role: 'status', class: 'hint' }),
    make('ul', { id: 'found' }));
}

function showFound(page) {
  const typed = byId('find').value;
  const found = findThings(page.index, typed, MOST_FOUND + 1);
  byId('found-count').textContent = typed.trim() === '' ? ''
    : found.length === 0 ? `Nothing is called or described like that.`
    : found.length > MOST_FOUND ? `More than ${MOST_FOUND} found: type on.` : `${found.length} found.`;
  byId('found').replaceChildren(...found.slice(0, MOST_FOUND).map(thing => make('li', {},
    make('button', { type: 'button', click: () => takeFound(page, thing) }, thing.name, make('small', {}, ` ${KIND_WORDS[thing.kind].toLowerCase()}${aside(thing)}`)))));
}

function aside(thing) {
  const words = thing.kind === 'wire' ? wireWords(thing.facts) : thing.facts.words || thing.facts.kind;
  return words ? `, ${words}` : '';
}

function leaveSearch(page, event) {
  const buttons = byId('found').querySelectorAll('button');
  if (event.key === 'ArrowDown' && buttons.length > 0) {
    event.preventDefault();
    buttons[0].focus();
  } else if (event.key === 'Enter' && buttons.length > 0) {
    event.preventDefault();
    buttons[0].click();
  } else if (event.key === 'Escape') {
    byId('find').value = '';
    showFound(page);
  }
}

/** Chooses it and brings the first drawing of it into view. */
function takeFound(page, thing) {
  choose(page, thing);
  byId('found').replaceChildren();
  byId('found-count').textContent = `${KIND_WORDS[thing.kind]} ${thing.name} is chosen.`;
  const mark = (page.marks.get(thing.key) ?? [])[0] ?? (page.names.get(thing.key) ?? [])[0];
  if (mark) goTo(mark.closest('[data-place]'), mark, thing.key);
}
