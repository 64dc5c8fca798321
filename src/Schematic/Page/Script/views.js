// How the drawings are seen: faces are turned over, sheets are enlarged, sections are gone to.

const ZOOMS = [1, 1.5, 2, 3, 4.5];

function prepareFaces() {
  for (const face of document.querySelectorAll('.face')) {
    const turn = make('button', { type: 'button', class: 'turn', click: () => turnFace(face) });
    face.querySelector('figcaption').append(' ', turn);
    showSide(face, face.dataset.shows);
  }
}

function turnFace(face) {
  showSide(face, face.dataset.shows === 'rear' ? 'front' : 'rear');
}

function showSide(face, side) {
  face.dataset.shows = side;
  face.querySelector('.turn').textContent = side === 'rear' ? 'Turn over: show the mating side' : 'Turn over: show the wire side';
}

function prepareSheets(page) {
  for (const sheet of document.querySelectorAll('.sheet')) {
    const zoom = make('span', { class: 'zoom' },
      make('button', { type: 'button', 'aria-label': 'Smaller', click: () => zoomBy(page, sheet, -1) }, '−'),
      make('button', { type: 'button', 'aria-label': 'Larger', click: () => zoomBy(page, sheet, 1) }, '+'));
    sheet.querySelector('figcaption').append(zoom);
    zoomTo(sheet, page.zooms[sheet.id] ?? startZoom());
  }
}

/** On a narrow screen a sheet begins enlarged, so that its lettering can be read. */
function startZoom() {
  return window.innerWidth < 700 ? 2 : 0;
}

function zoomBy(page, sheet, step) {
  page.zooms[sheet.id] = Math.min(ZOOMS.length - 1, Math.max(0, Number(sheet.dataset.zoom) + step));
  zoomTo(sheet, page.zooms[sheet.id]);
}

function zoomTo(sheet, zoom) {
  const paper = sheet.querySelector('.paper');
  // A sheet that has just come stands at its left edge: asking where would lay the whole page out.
  const isNew = sheet.dataset.zoom === undefined;
  const middle = isNew ? 0 : (paper.scrollLeft + paper.clientWidth / 2) / Math.max(1, paper.scrollWidth);
  sheet.dataset.zoom = zoom;
  sheet.querySelector('svg').style.width = `${100 * ZOOMS[zoom]}%`;
  if (!isNew) paper.scrollLeft = middle * paper.scrollWidth - paper.clientWidth / 2;
}

/** Links to the sections, and an empty section is taken away. */
function prepareNavigation() {
  for (const section of document.querySelectorAll('#content > section')) section.hidden = section.children.length < 2;
  const links = [...document.querySelectorAll('#content > section:not([hidden])')]
    .map(s => make('a', { href: `#${s.id}` }, s.querySelector('h2').textContent.split(':')[0]));
  document.querySelector('#head nav')?.remove();
  byId('head').append(make('nav', { 'aria-label': 'Sections' }, ...links, make('button', { type: 'button', click: () => window.print() }, 'Print')));
}
