// Making elements. Text goes into the page as text and never as markup.

const SVG = 'http://www.w3.org/2000/svg';

function make(name, attributes = {}, ...children) {
  const element = document.createElement(name);
  fill(element, attributes, children);
  return element;
}

function makeSvg(name, attributes = {}, ...children) {
  const element = document.createElementNS(SVG, name);
  fill(element, attributes, children);
  return element;
}

function fill(element, attributes, children) {
  for (const [key, value] of Object.entries(attributes)) {
    if (typeof value === 'function') element.addEventListener(key, value);
    else if (value !== undefined && value !== null && value !== false) element.setAttribute(key, value === true ? '' : value);
  }
  element.append(...children.filter(c => c !== undefined && c !== null && c !== false));
}

function byId(id) {
  return document.getElementById(id);
}

/** Lets one of several elements be reached with the tab key, and the arrow keys go from one to the next. */
function rove(elements) {
  elements.forEach((element, i) => {
    element.tabIndex = i === 0 ? 0 : -1;
    element.addEventListener('keydown', event => roveOn(event, elements, i));
    element.addEventListener('focus', () => elements.forEach(e => { e.tabIndex = e === element ? 0 : -1; }));
  });
}

function roveOn(event, elements, from) {
  const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
  const target = step ? from + step : { Home: 0, End: elements.length - 1 }[event.key];
  if (target === undefined || !elements[target]) return;
  event.preventDefault();
  elements[target].focus();
}
