"use strict";
(() => {
  let things, rows;
  const bar = document.getElementById("pointed");
  const [said, link] = bar.children;
  const under = (a, b) => a === b || a.startsWith(b + "/");
  let held = null;
  let shown = null;

  function show(thing) {
    const id = thing && thing.dataset.part;
    if (id === shown) return;
    shown = id;
    for (const e of things) {
      const own = e.dataset.part;
      const alike = e.dataset.alike ? e.dataset.alike.split(" ") : [];
      e.classList.toggle("lit", id !== null && (under(own, id) || alike.includes(id)));
      e.classList.toggle("near", id !== null && own !== id && under(id, own));
    }
    bar.hidden = id === null;
    if (id === null) return;
    const row = rows.find((r) => under(r.dataset.part, id) || under(id, r.dataset.part));
    const title = thing.querySelector("title");
    said.textContent = title ? title.textContent
      : [...thing.cells].slice(0, 3).map((c) => c.textContent.trim()).join(", ");
    link.hidden = !row;
    if (row) link.href = "#" + row.id;
  }

  const thingOf = (e) => (e.target instanceof Element ? e.target.closest("[data-part]") : null);

  document.addEventListener("pointerover", (e) => {
    if (bar.contains(e.target)) return;
    show(thingOf(e) || held);
  });
  document.addEventListener("focusin", (e) => {
    const thing = thingOf(e);
    if (thing) show(held = thing);
  });
  document.addEventListener("click", (e) => {
    if (bar.contains(e.target)) return;
    show(held = thingOf(e));
  });

  // gather finds what can be pointed at, again where a live page is redrawn.
  function gather() {
    things = [...document.querySelectorAll("[data-part]")];
    rows = things.filter((e) => e.id.startsWith("row-"));
    const stop = Math.max(rows.indexOf(document.activeElement), 0);
    rows.forEach((row, i) => { row.tabIndex = i === stop ? 0 : -1; });
    const again = (id) => things.find((e) => e.dataset.part === id) || null;
    const was = shown;
    held = held && again(held.dataset.part);
    shown = undefined;
    show(was === null ? null : again(was));
  }
  document.addEventListener("redrawn", gather);
  gather();

  document.addEventListener("keydown", (e) => {
    if (e.key === "Escape") return show(held = null);
    const at = rows.indexOf(e.target);
    if (at === -1) return;
    const step = { ArrowDown: 1, ArrowUp: -1, Home: -at, End: rows.length - 1 - at }[e.key];
    if (step !== undefined) {
      e.preventDefault();
      const next = rows[Math.min(Math.max(at + step, 0), rows.length - 1)];
      rows[at].tabIndex = -1;
      next.tabIndex = 0;
      next.focus();
    } else if (e.key === "Enter") {
      const shape = document.querySelector("svg .lit");
      if (shape) shape.closest("figure").scrollIntoView({ block: "start" });
    }
  });
})();
