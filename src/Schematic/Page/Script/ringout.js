// The ring-out: steps with ticks and readings, kept in the page's storage and saved as a readings file.

const UNITS = { '': 1, ohm: 1, ohms: 1, 'ω': 1, k: 1e3, kohm: 1e3, 'kω': 1e3, m: 1e6, mohm: 1e6, 'mω': 1e6, v: 1, mv: 1e-3 };

function storageKey(page, ringOut) {
  return `schematic ${page.data.file} ${page.data.print} ${ringOut.key}`;
}

/** What was typed so far. A browser that keeps nothing for a file keeps it while the page is open. */
function readKept(page, ringOut) {
  try {
    return JSON.parse(window.localStorage.getItem(storageKey(page, ringOut))) ?? { steps: {}, head: {} };
  } catch {
    return { steps: {}, head: {} };
  }
}

function keep(page, ringOut, kept) {
  try {
    window.localStorage.setItem(storageKey(page, ringOut), JSON.stringify(kept));
  } catch {
    page.keepsNothing = true;
  }
}

/** What a person typed as the readings file writes it; null for what cannot be understood, empty for nothing. */
function readingOf(step, typed) {
  const text = typed.trim().toLowerCase().replace(',', '.');
  if (text === '') return '';
  if (['open', 'ol', 'o.l', 'o.l.', 'over', 'over range', '1.'].includes(text)) return 'open';
  if (!step.diode && ['closed', 'beep', 'beeps'].includes(text)) return 'closed';
  const match = /^([0-9]*\.?[0-9]+)\s*([a-zω]*)$/.exec(text);
  if (!match || !(match[2] in UNITS)) return null;
  const isVolts = step.diode || match[2].endsWith('v');
  if (isVolts && !['', 'v', 'mv'].includes(match[2])) return null;
  const value = Number(match[1]) * UNITS[match[2]];
  if (isVolts) return `${plain(value)} V`;
  return value >= 1e6 ? `${plain(value / 1e6)} Mohm` : value >= 1e3 ? `${plain(value / 1e3)} kohm` : `${plain(value)} ohm`;
}

function plain(value) {
  return String(Number(value.toPrecision(6)));
}

/** Whether a reading lies within the limits that the compiler gives: fits, differs, or nothing was read. */
function verdictOf(step, typed) {
  const reading = readingOf(step, typed);
  if (reading === '') return '';
  if (reading === null) return 'unclear';
  if (reading === 'open' || step.shows === 'open') return reading === 'open' && step.shows === 'open' ? 'fits' : 'differs';
  if (reading === 'closed') return step.expected === 'closed' ? 'fits' : 'differs';
  if (reading.endsWith(' V') !== (step.shows === 'volts')) return 'differs';
  const [number, unit] = reading.split(' ');
  const value = Number(number) * { ohm: 1, kohm: 1e3, Mohm: 1e6, V: 1 }[unit];
  return value >= (step.least ?? -Infinity) && value <= (step.most ?? Infinity) ? 'fits' : 'differs';
}

const VERDICT_WORDS = {
  fits: '✓ as expected', differs: '✗ not as expected', unclear: 'not understood: write 38 ohm, 4.7 kohm, 0.6 V, open or closed', '': '',
};

function buildRingOuts(page) {
  const section = byId('ring-out');
  section.replaceChildren(section.querySelector('h2'));
  for (const ringOut of page.data.ringOuts) section.append(ringOutBox(page, ringOut));
}

function ringOutBox(page, ringOut) {
  const kept = readKept(page, ringOut);
  const count = make('p', { class: 'count', role: 'status' });
  const rows = ringOut.steps.map((step, i) => stepRow(page, ringOut, kept, step, i, () => tellCount(count, ringOut, kept)));
  tellCount(count, ringOut, kept);
  return make('div', { class: 'ring-out', 'data-place': `Ring-out of ${ringOut.title}` },
    make('h3', {}, `Ring-out of ${ringOut.title}`),
    make('ol', { class: 'cautions' }, ...ringOut.cautions.map(c => make('li', {}, c))),
    headBox(page, ringOut, kept),
    make('div', { class: 'scroll', tabindex: '0', role: 'region', 'aria-label': `Steps of the ring-out of ${ringOut.title}` },
      make('table', {}, make('caption', {}, `Steps of the ring-out of ${ringOut.title}`), make('thead', {}, make('tr', {},
        ...['Step', 'Hold', 'Red lead', 'Black lead', 'Expected', 'As expected', 'The meter shows'].map(h => make('th', { scope: 'col' }, h)))),
      make('tbody', {}, ...rows))),
    count,
    make('p', { class: 'row' },
      make('button', { type: 'button', class: 'save', click: () => saveReadings(page, ringOut, kept) }, 'Save as a readings file'),
      clearButton(page, ringOut)),
    ...ringOut.notes.map(n => make('p', { class: 'note' }, n)));
}

function headBox(page, ringOut, kept) {
  const field = (name, words) => make('label', {}, `${words} `, make('input', { type: 'text', value: kept.head[name] ?? '', autocomplete: 'off', input: event => {
    kept.head[name] = event.target.value;
    keep(page, ringOut, kept);
  } }));
  return make('p', { class: 'row' }, field('date', 'Date'), field('by', 'Measured by'), field('meter', 'Meter'));
}

function stepRow(page, ringOut, kept, step, i, counted) {
  const number = i + 1;
  const verdict = make('span', { class: 'verdict', id: `verdict-${ringOut.key}-${number}` });
  const typed = make('input', {
    type: 'text', inputmode: 'text', autocomplete: 'off', size: 9, value: kept.steps[i] ?? '', 'aria-label': `Step ${number}: what the meter shows`, 'aria-describedby': verdict.id,
  });
  const tick = make('input', { type: 'checkbox', 'aria-label': `Step ${number}: as expected, ${step.expected}` });
  const show = () => {
    const how = verdictOf(step, typed.value);
    verdict.textContent = VERDICT_WORDS[how];
    verdict.dataset.verdict = how;
    tick.checked = how === 'fits';
  };
  const take = text => {
    typed.value = text;
    if (text.trim() === '') delete kept.steps[i];
    else kept.steps[i] = text;
    keep(page, ringOut, kept);
    show();
    counted();
  };
  typed.addEventListener('input', () => take(typed.value));
  tick.addEventListener('change', () => take(tick.checked ? step.expected : ''));
  show();
  return make('tr', {},
    make('th', { scope: 'row' }, make('button', { type: 'button', 'aria-label': `Step ${number}: show the leads on the drawings`, click: () => showLeads(page, step, number) }, String(number))),
    make('td', {}, step.move), make('td', { class: 'lead red' }, step.red), make('td', { class: 'lead black' }, step.black),
    make('td', {}, (step.diode ? 'diode test: ' : '') + step.expected, make('small', {}, step.limits === '' ? '' : ` ${step.limits}`)),
    make('td', { class: 'centre' }, tick), make('td', {}, typed, ' ', verdict));
}

/** Lights the contacts under the leads on drawings, faces and lists. */
function showLeads(page, step, number) {
  choose(page, null);
  step.terminals.map(t => page.index.byKey.get(`terminal ${t}`)).forEach(t => t && light(page, t, 'chosen'));
  say(page, `Step ${number}: ${step.move ? step.move + '; ' : ''}red lead on ${step.red}, black lead on ${step.black}.`);
}

function tellCount(count, ringOut, kept) {
  const verdicts = ringOut.steps.map((s, i) => verdictOf(s, kept.steps[i] ?? ''));
  const differing = verdicts.map((v, i) => v === 'differs' ? i + 1 : 0).filter(n => n);
  const read = verdicts.filter(v => v === 'fits' || v === 'differs').length;
  count.textContent = `${read} of ${ringOut.steps.length} steps read`
    + (differing.length > 0 ? `; not as expected: ${differing.join(', ')}. Save the file and run 'schematic diagnose' on it.` : '.');
}

/** The readings file: the compiler's own, with what was read in the places that it leaves blank. */
function readingsText(ringOut, kept) {
  const text = ringOut.file.map((piece, i) => i === 0 ? piece : (readingOf(ringOut.steps[i - 1], kept.steps[i - 1] ?? '') || '?') + piece).join('');
  return text.replace('date ""  by ""', () => `date ${quoted(kept.head.date)}  by ${quoted(kept.head.by)}`).replace('meter ""', () => `meter ${quoted(kept.head.meter)}`);
}

function quoted(text = '') {
  return `"${text.replace(/[\u0000-\u001f]/g, ' ').replace(/["\\]/g, '\\$&')}"`;
}

function saveReadings(page, ringOut, kept) {
  const file = new Blob([readingsText(ringOut, kept)], { type: 'text/plain' });
  const link = make('a', { href: URL.createObjectURL(file), download: `${page.data.file.replace(/\.panel$/, '')}-${ringOut.key}.readings` });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  say(page, page.keepsNothing ? 'Saved. This browser keeps nothing for a page in a file: save before you close it.' : 'Saved as a readings file.');
}

/** Clears after a second press. */
function clearButton(page, ringOut) {
  const button = make('button', { type: 'button', click: () => {
    if (button.dataset.sure) {
      try { window.localStorage.removeItem(storageKey(page, ringOut)); } catch { /* nothing was kept */ }
      buildRingOuts(page);
      say(page, 'The readings are cleared.');
      return;
    }
    button.dataset.sure = 'yes';
    button.textContent = 'Press again to clear all readings';
  } }, 'Clear all readings');
  button.addEventListener('blur', () => {
    delete button.dataset.sure;
    button.textContent = 'Clear all readings';
  });
  return button;
}
