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
    if (now.dataset && now.dataset.asks && old.childElementCount > 1) { // what it has stays until it is asked for anew
      return become(old.firstElementChild, now.firstElementChild);
    }
    if (old.nodeName !== now.nodeName || old.nodeName === "svg" || old.nodeName === "LABEL") { // a tick is of one text
      old.replaceWith(now);
    } else if (old.nodeType !== Node.ELEMENT_NODE) {
      old.nodeValue = now.nodeValue;
    } else {
      attributes(old, now);
      children(old, now);
    }
  }

  // attributes takes them over, but for what a person has unfolded, and for where Tab stops, which is the
  // script's that hears "redrawn".
  function attributes(old, now) {
    for (const { name } of [...old.attributes]) {
      if (!now.hasAttribute(name) && name !== "open" && name !== "tabindex") old.removeAttribute(name);
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

  // The page of a large build asks for figures when they come near the window and for lists when they are
  // unfolded or searched, for one after another, and anew when the build has changed.
  const near = new Set();
  const sight = new IntersectionObserver((seen) => {
    for (const { target, isIntersecting } of seen) {
      if (isIntersecting) near.add(target);
      else near.delete(target);
    }
    draw();
  }, { rootMargin: "50%" });
  const field = document.getElementById("wanted");
  const searched = (e) => field.value.trim() !== "" && e.closest("#parts, #cuts") !== null;
  const stale = (e) => e.drawn !== number;
  const wants = (e) => stale(e) && (e.nodeName === "DETAILS" ? e.open || searched(e) : near.has(e));
  const pieces = () => [...document.querySelectorAll("[data-asks]")];

  let drawing = false;
  async function draw() {
    if (drawing || number === null) return;
    drawing = true;
    let drawn = 0;
    try {
      for (let e = pieces().find(wants); e && number !== null; e = pieces().find(wants)) {
        e.drawn = number;
        const reply = await fetch("/pieces/" + encodeURIComponent(e.dataset.asks), { cache: "no-store" });
        if (!reply.ok) continue; // the build has changed, and the page will
        const piece = new DOMParser().parseFromString(await reply.text(), "text/html").body;
        inPlace(() => fill(e, piece));
        watch();
        drawn++;
      }
    } catch {
      // the server has gone
    }
    drawing = false;
    if (drawn > 0) document.dispatchEvent(new Event("redrawn"));
  }

  // fill puts a piece where it was asked for: a figure, or what a list has under its summary.
  function fill(e, piece) {
    if (e.nodeName === "DETAILS") {
      piece.prepend(e.querySelector("summary").cloneNode(true));
      children(e, piece);
    } else {
      e.className = piece.firstElementChild.className;
      children(e, piece.firstElementChild);
    }
  }
  const watch = () => { for (const e of document.querySelectorAll("figure[data-asks]")) sight.observe(e); };
  if (field) field.addEventListener("input", () => {
    if (pieces().some((e) => stale(e) && searched(e))) document.getElementById("found").textContent = "Reading the lists …";
    draw();
  });
  document.addEventListener("toggle", draw, true);

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
    watch();
    draw();
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
  watch();
})();
