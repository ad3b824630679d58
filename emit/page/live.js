"use strict";
(() => {
  const shown = ["#live", "body > header", "body > .bar > nav", "body > main"];
  const ended = document.getElementById("ended");
  let number = document.body.dataset.number;
  let wanted = number;
  let asking = false;

  // become makes a node what another is. What is alike stays as it is, and with it
  // focus, scrolling, and what has been written, ticked or folded. Nothing of that is in a
  // picture, which takes less time to exchange than to change.
  function become(old, now) {
    if (now.dataset && "same" in now.dataset || old.isEqualNode(now)) return;
    if (old.nodeName !== now.nodeName || old.nodeName === "svg" || old.nodeName === "LABEL") { // a tick is of one text
      old.replaceWith(now);
    } else if (old.nodeType !== Node.ELEMENT_NODE) {
      old.nodeValue = now.nodeValue;
    } else {
      attributes(old, now);
      children(old, now);
    }
  }

  function attributes(old, now) {
    for (const { name } of [...old.attributes]) {
      if (!now.hasAttribute(name) && name !== "open") old.removeAttribute(name);
    }
    for (const { name, value } of now.attributes) {
      if (old.getAttribute(name) !== value && name !== "open") old.setAttribute(name, value);
    }
  }

  // children pairs those that have an id by it, the others in their order.
  function children(old, now) {
    const next = [...now.childNodes];
    const ids = new Set(next.map((e) => e.id));
    for (const e of [...old.children]) if (e.id && !ids.has(e.id)) e.remove();
    const named = new Map([...old.children].filter((e) => e.id).map((e) => [e.id, e]));
    const others = [...old.childNodes].filter((e) => !e.id);
    for (const e of others.splice(next.filter((e) => !e.id).length)) e.remove();
    let at = old.firstChild;
    for (const e of next) {
      const mate = e.id ? named.get(e.id) : others.shift();
      while (mate && e.id && at && !at.id) at = at.nextSibling; // the mate stays; others come to it
      if (mate && mate === at) at = at.nextSibling;
      else old.insertBefore(mate || e, at);
      if (mate) become(mate, e);
    }
  }

  // inPlace redraws, and keeps what is in the middle of the window where it is, and the
  // focus where it was.
  function inPlace(redraw) {
    const over = document.elementsFromPoint(innerWidth / 2, innerHeight / 2).map((e) => e.closest("main [id]"));
    const read = scrollY > 0 && over.find(Boolean);
    const before = read && read.getBoundingClientRect().top;
    const focus = document.activeElement;
    redraw();
    const again = focus.isConnected ? focus : focus.id && document.getElementById(focus.id);
    if (again && again !== document.activeElement) again.focus({ preventScroll: true });
    if (read && read.isConnected) scrollBy(0, read.getBoundingClientRect().top - before);
  }

  // lean leaves figures empty that the text taken before has too, for they are most of a
  // page, and marks them.
  let figures = new Set();
  function lean(text) {
    const before = figures;
    figures = new Set();
    return text.replace(/(<figure)( [^>]*>)[^]*?(<\/figure>)/g, (figure, start, attributes, end) => {
      figures.add(figure);
      return before.has(figure) ? start + " data-same" + attributes + end : figure;
    });
  }

  const built = (page) => page.querySelector("body > .bar");
  const policy = (page) => page.querySelector("meta[http-equiv]").content;

  function take(page) {
    if (policy(page) !== policy(document)) return location.reload(); // another barwright
    if (!built(page) !== !built(document)) return location.reload(); // the first build
    inPlace(() => {
      for (const part of shown) if (document.querySelector(part)) become(document.querySelector(part), page.querySelector(part));
      document.title = page.title;
      number = document.body.dataset.number = page.body.dataset.number;
      document.dispatchEvent(new Event("redrawn"));
    });
  }

  async function follow() {
    if (asking) return;
    asking = true;
    try {
      while (number !== wanted) {
        const asked = wanted;
        const reply = await fetch("/", { cache: "no-store" });
        if (!reply.ok) break;
        const page = new DOMParser().parseFromString(lean(await reply.text()), "text/html");
        if (wanted === asked) wanted = page.body.dataset.number; // it may be ahead
        take(page);
      }
    } catch {
      number = null; // the server has gone; whatever comes back is asked anew
    }
    asking = false;
  }

  // listen hears of what there is to show while the page is in sight. A browser keeps six
  // connections to a server: pages out of sight leave theirs to others.
  let source = null;
  function listen() {
    if (document.hidden || source && source.readyState !== EventSource.CLOSED) return;
    source = new EventSource("/events");
    source.onmessage = (e) => {
      if (!ended.hidden) number = null;
      ended.hidden = true;
      wanted = e.data;
      follow();
    };
    source.onerror = () => {
      ended.hidden = false;
      if (source.readyState === EventSource.CLOSED) setTimeout(listen, 1000);
    };
  }
  document.addEventListener("visibilitychange", () => {
    if (document.hidden && source) source.close();
    listen();
  });
  listen();
})();
