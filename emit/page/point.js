"use strict";
(() => {
  const all = (what) => [...document.querySelectorAll(what)];
  let things, rows, listed;
  const bar = document.getElementById("pointed");
  const [name, said, toRow, toDrawing, toStock] = bar.children;
  const field = document.getElementById("wanted");
  if (!field) return; // a page without a build
  const found = document.getElementById("found");
  let held = null;
  let stop = null;
  let shown = null;

  // A name lies under those that are its beginnings: cabinet.a/side-left under cabinet.a.
  const above = (id) => [...id].flatMap((c, i) => (c === "/" ? [id.slice(0, i)] : []));
  const known = new Map(); // a part is drawn many times
  function withAbove(id) {
    if (!known.has(id)) known.set(id, [id, ...above(id)]);
    return known.get(id);
  }
  const stocked = (stock) => rows.filter((r) => r.dataset.stock === stock).map((r) => r.dataset.part);
  // mark gives a class to all that shows one of some parts, or what it is bought as.
  function mark(ids, style) {
    const wanted = new Set(ids);
    const hit = (e) => !e.buys && e.within.some((id) => wanted.has(id));
    const stocks = new Set(rows.filter(hit).map((r) => r.dataset.stock));
    for (const e of things) e.classList.toggle(style, e.buys ? stocks.has(e.dataset.stock) : hit(e));
  }

  const first = (what) => all(what).find((e) => e.closest("figure").getClientRects().length > 0);

  function show(thing) {
    if (thing === shown) return;
    shown = thing;
    const ids = thing ? thing.own : [];
    mark(ids, "lit");
    const round = new Set(ids.flatMap(above));
    for (const e of things) e.classList.toggle("near", !e.buys && !e.classList.contains("lit") && round.has(e.own[0]));
    if (thing) thing.classList.add("lit");
    bar.hidden = !thing;
    if (thing) tell(thing);
  }

  // A number and its fraction stay on one line, and so do two sizes.
  const say = (text) => { said.textContent = text.replace(/(\d) (\d+\/\d)/g, "$1\u00a0$2").replaceAll(" × ", "\u00a0×\u00a0"); };

  // leads makes a link lead to the figure of a shape, if there is one.
  function leads(link, shape) {
    link.hidden = !shape;
    if (shape) link.href = "#" + shape.closest("figure").id;
    link.onclick = () => centre(shape);
  }

  // centre shows where a shape is in a drawing that is wider than the window.
  function centre(shape) {
    const frame = shape.closest(".scroll"), within = frame.getBoundingClientRect(), at = shape.getBoundingClientRect();
    frame.scrollLeft += at.left + at.width / 2 - within.left - within.width / 2;
  }

  function tell(thing) {
    const lit = rows.filter((r) => r.classList.contains("lit"));
    const row = rows.includes(thing) ? thing : lit.find((r) => r.dataset.part === thing.dataset.part) || null;
    const title = thing.querySelector("title");
    const cell = (i) => row.cells[i].textContent.trim();
    if (row) {
      name.textContent = cell(0);
      const within = thing !== row && title && !title.textContent.startsWith(cell(0) + ":") ? title.textContent + "; in " : "";
      say(within + cell(1) + ", " + cell(2) + ": " + cell(4) + ", " + cell(5) + " thick, " + cell(3) + "; " + row.dataset.lies);
    } else {
      name.textContent = "";
      say(title ? title.textContent : [...thing.cells].slice(0, 3).map((c) => c.textContent.trim()).filter(Boolean).join(", "));
    }
    const at = row || lit[0];
    toRow.hidden = !at;
    if (at) toRow.href = "#" + at.id;
    leads(toDrawing, first("#drawings path.lit"));
    leads(toStock, at && first("#layouts path.lit"));
  }

  // stopAt makes a row, and the link in it, the one of the rows that the key Tab stops at.
  function stopAt(row) {
    const tab = (r, index) => { for (const e of r ? [r, ...r.querySelectorAll("a")] : []) e.tabIndex = index; };
    tab(stop, -1);
    tab(stop = row, 0);
  }

  const thingOf = (e) => (e.target instanceof Element ? e.target.closest("[data-part], [data-stock]") : null);

  document.addEventListener("pointerover", (e) => {
    if (!bar.contains(e.target)) show(thingOf(e) || held);
  });
  document.addEventListener("focusin", (e) => {
    const thing = thingOf(e);
    if (thing) show(held = thing);
  });
  document.addEventListener("click", (e) => {
    if (!bar.contains(e.target)) show(held = thingOf(e));
  });

  const count = (n, word) => n + " " + word + (n === 1 ? "" : "s");

  function filter() {
    const words = field.value.toLowerCase().split(/\s+/).filter(Boolean);
    const on = words.length > 0;
    const says = (text) => words.every((w) => text.replaceAll("\u00a0", " ").toLowerCase().includes(w));
    const matching = on ? rows.filter((r) => says(r.textContent)) : [];
    mark(matching.map((r) => r.dataset.part), "found");
    for (const e of things) {
      const title = on && !e.classList.contains("found") && (e.cells ? e : e.querySelector("title"));
      if (title && says(title.textContent)) e.classList.add("found");
    }
    for (const r of listed) r.hidden = on && !r.classList.contains("found");
    for (const r of all("#bill .group, #bill .sum")) r.hidden = on;
    for (const f of all("#parts figure")) f.hidden = on && !f.querySelector(".found");
    const left = (id) => listed.filter((r) => !r.hidden && r.closest("#" + id)).length;
    const drawings = () => all("#drawings figure").filter((f) => f.querySelector(".found")).length;
    found.textContent = on
      ? count(left("parts"), "part") + ", " + count(left("cuts"), "cut") + ", " + count(left("bill"), "line") + " to buy; in " + count(drawings(), "drawing")
      : "";
    if (stop && stop.hidden && matching.length) stopAt(matching[0]);
  }

  field.addEventListener("input", filter);
  field.parentElement.hidden = false;

  // A drawing that need not be scrolled is no stop on the way of the key Tab.
  const fits = new ResizeObserver((seen) => {
    for (const { target } of seen) {
      if (target.scrollWidth > target.clientWidth) target.tabIndex = 0;
      else target.removeAttribute("tabindex");
    }
  });

  // gather finds what can be pointed at, again where a live page is redrawn.
  function gather() {
    const before = [shown, held].map((e) => (e ? e.own[0] : undefined)); // a row may be another part's now
    things = all("[data-part], [data-stock]");
    rows = all("#parts tr[data-part]");
    listed = all("#parts tbody tr, #cuts tbody tr, #bill tr[data-stock]");
    for (const e of things) {
      const { part, alike, stock } = e.dataset;
      e.own = part ? [part, ...(alike ? alike.split(" ") : [])] : stocked(stock);
      e.within = e.own.flatMap(withAbove);
      e.buys = !part;
    }
    const at = rows.find((r) => r.contains(document.activeElement)) || rows[0];
    for (const row of rows) stopAt(row);
    stopAt(at);
    for (const e of all(".scroll")) fits.observe(e);
    const [was, kept] = before.map((id) => (id && things.find((e) => e.dataset.part === id)) || null);
    held = kept;
    if (shown) {
      shown = undefined;
      show(was);
    }
    if (field.value) filter();
  }
  document.addEventListener("redrawn", gather);
  gather();

  document.addEventListener("keydown", (e) => {
    if (e.key === "Escape") {
      field.value = "";
      filter();
      return show(held = null);
    }
    if (e.key === "/" && !e.ctrlKey && !e.metaKey && !e.altKey && e.target !== field) {
      e.preventDefault();
      return field.focus();
    }
    const open = rows.filter((r) => !r.hidden);
    if (e.target === field && e.key === "Enter" && open.length) {
      e.preventDefault();
      stopAt(open[0]);
      return open[0].focus();
    }
    const at = open.indexOf(e.target.closest("tr"));
    if (at === -1) return;
    const step = { ArrowDown: 1, ArrowUp: -1, Home: -at, End: open.length - 1 - at }[e.key];
    if (step !== undefined) {
      e.preventDefault();
      const next = open[Math.min(Math.max(at + step, 0), open.length - 1)];
      stopAt(next);
      next.focus();
    } else if (e.key === "Enter" && e.target === open[at]) {
      const shape = first("svg .lit");
      if (!shape) return;
      centre(shape);
      shape.closest("figure").scrollIntoView({ block: "start" });
    }
  });
})();
