// What others may call: see the README beside the library's folder "Page".

/** Takes over the content of a page that was written anew; `text` is its whole HTML. Scripts in it never run. */
function replacePage(text) {
  const fresh = new DOMParser().parseFromString(text, 'text/html');
  const scroll = { left: window.scrollX, top: window.scrollY };
  document.title = fresh.title;
  for (const id of ['content']) {
    document.getElementById(id).replaceWith(document.adoptNode(fresh.getElementById(id)));
  }
  window.scrollTo(scroll);
}

window.schematicPage = { replace: replacePage };
