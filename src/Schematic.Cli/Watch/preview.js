'use strict';
// Asks the server for news, shows the findings of the file as it stands, and takes a new drawing over. Whatever comes is put into the
// page as text, never as markup.
(() => {
  let version = 0;
  let drawing = __DRAWING__;
  const box = document.getElementById('preview');

  const style = new CSSStyleSheet();
  style.replaceSync(`
    #preview { font: 0.95rem/1.35 system-ui, sans-serif; }
    #preview:empty { display: none; }
    #preview section { border: 2px solid; border-radius: 0.4rem; padding: 0.6rem 0.8rem; margin: 0 0 0.8rem; background: Canvas; color: CanvasText; }
    #preview h2 { margin: 0 0 0.3rem; font-size: 1.05rem; }
    #preview ol { margin: 0; padding-left: 1.4rem; }
    #preview li { margin: 0.3rem 0; }
    #preview pre { margin: 0.15rem 0; overflow-x: auto; font: 0.9rem/1.25 ui-monospace, monospace; }
    #preview .stale { border-style: dashed; border-width: 3px; }
    @media screen { #preview section { position: sticky; top: 0; z-index: 10; max-height: 45vh; overflow: auto; } }
    @media screen and (min-width: 75rem) {
      body:has(#preview > section) { margin-right: 30rem; }
      #preview section { position: fixed; top: 1rem; right: 1rem; bottom: auto; width: 27rem; max-height: calc(100vh - 4rem); }
    }
    @media print { #preview { display: none; } }
  `);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, style];
  box.setAttribute('role', 'status');
  box.setAttribute('aria-live', 'polite');

  function put(parent, name, text, className) {
    const made = document.createElement(name);
    if (text) made.textContent = text;
    if (className) made.className = className;
    parent.append(made);
    return made;
  }

  function show(news) {
    const told = news.findings.filter(f => f.severity !== 'note' || news.isStale);
    if (told.length === 0 && !news.trouble) {
      box.replaceChildren();
      return;
    }

    const section = document.createElement('section');
    if (news.isStale) section.className = 'stale';
    put(section, 'h2', news.summary);
    if (news.trouble) put(section, 'p', news.trouble);
    const list = put(section, 'ol');
    for (const finding of told) {
      const item = put(list, 'li');
      put(item, 'strong', `${finding.severity} ${finding.rule}`);
      put(item, 'span', ` ${finding.place}: ${finding.message}`);
      if (finding.line) put(item, 'pre', `${finding.line}\n${finding.mark}`);
      for (const step of finding.trace) put(item, 'div', step);
      if (finding.help) put(item, 'div', finding.help);
    }

    box.replaceChildren(section);
  }

  function take(news) {
    version = news.version;
    if (news.page !== null) {
      if (!window.schematicPage) {
        location.reload();
        return;
      }

      drawing = news.drawing;
      window.schematicPage.replace(news.page);
    }

    show(news);
    requestAnimationFrame(() => requestAnimationFrame(() => {
      console.debug(`preview ${version} painted`);
    }));
  }

  function lost() {
    box.replaceChildren();
    const section = put(box, 'section', '', 'stale');
    put(section, 'h2', 'The preview has ended');
    put(section, 'p', 'The drawing stays as it is. Start schematic watch again, and open the address that it prints.');
  }

  async function ask() {
    let failures = 0;
    while (failures < 20) {
      try {
        const answer = await fetch(`news?after=${version}&drawing=${drawing}`, { cache: 'no-store' });
        if (answer.status === 403 || answer.status === 404) break;
        if (answer.status === 200) take(await answer.json());
        failures = 0;
      } catch {
        failures++;
        await new Promise(done => setTimeout(done, 250));
      }
    }

    lost();
  }

  ask();
})();
