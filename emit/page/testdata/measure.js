// Measures, in a real browser, every page framed by this document: it is the
// outside check's eye and no part of the page.
"use strict";
function corners(text) {
  const box = text.getBBox(), m = text.getCTM();
  const at = (x, y) => ({ x: m.a * x + m.c * y + m.e, y: m.b * x + m.d * y + m.f });
  return [at(box.x, box.y), at(box.x + box.width, box.y), at(box.x + box.width, box.y + box.height), at(box.x, box.y + box.height)];
}
// Two convex shapes are apart when some edge of one has all of the other beyond it.
function apart(p, q) {
  return p.some((a, i) => {
    const b = p[(i + 1) % p.length];
    const side = (c) => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    const inner = Math.sign(side(p[(i + 2) % p.length]));
    return q.every((c) => side(c) * inner <= 1e-6);
  });
}
function overlaps(svg) {
  const found = [];
  const texts = [...svg.querySelectorAll("text")].map((e) => ({ said: e.textContent, at: corners(e) }));
  texts.forEach((t, i) => texts.slice(0, i).forEach((u) => {
    if (!apart(t.at, u.at) && !apart(u.at, t.at)) found.push(t.said + " / " + u.said);
  }));
  return { found, texts };
}
function measure(frame) {
  const doc = frame.contentDocument, win = frame.contentWindow;
  const out = { width: frame.clientWidth, scroll: doc.documentElement.scrollWidth, svgs: 0, texts: 0, overlaps: [], outside: [], small: 0 };
  for (const svg of doc.querySelectorAll("svg")) {
    out.svgs++;
    const { found, texts } = overlaps(svg);
    out.texts += texts.length;
    out.overlaps.push(...found);
    const w = svg.clientWidth || svg.getBoundingClientRect().width, h = svg.getBoundingClientRect().height;
    for (const t of texts) {
      if (t.at.some((p) => p.x < 0 || p.y < 0 || p.x > w || p.y > h)) out.outside.push(t.said);
    }
    const type = svg.getAttribute("font-size") * w / svg.viewBox.baseVal.width;
    if (type < 9.9) out.small++;
  }
  // The check itself must be able to fail: a text set twice is an overlap.
  const svg = doc.querySelector("svg"), text = svg.querySelector("text"), twin = text.cloneNode(true);
  const before = overlaps(svg).found.length;
  text.after(twin);
  out.twin = overlaps(svg).found.length - before;
  twin.remove();
  // Pointing at a row shows its shapes; pointing at a shape shows its row.
  const over = (e) => e.dispatchEvent(new win.PointerEvent("pointerover", { bubbles: true }));
  const row = doc.querySelector("tr[data-part]");
  over(row);
  out.shapesOfRow = doc.querySelectorAll("path.lit").length;
  out.rowTitle = doc.getElementById("pointed").textContent;
  const id = row.dataset.part;
  over(doc.body);
  out.afterLeaving = doc.querySelectorAll(".lit").length;
  over([...doc.querySelectorAll("path[data-part]")].find((e) => e.dataset.part === id));
  out.rowOfShape = row.classList.contains("lit");
  over(doc.body);
  // Arrow keys move through the rows, one tab stop in all.
  row.focus();
  row.dispatchEvent(new win.KeyboardEvent("keydown", { key: "ArrowDown", bubbles: true }));
  out.secondRowLit = row.nextElementSibling.classList.contains("lit");
  out.tabStops = doc.querySelectorAll("tr[tabindex='0']").length;
  // What is pointed at is shown as it is cut, in the cut list, and in the bill.
  row.focus();
  out.cutLit = doc.querySelectorAll("#cuts tr.lit").length;
  out.billLit = [...doc.querySelectorAll("#bill tr.lit")].every((r) => r.dataset.stock === row.dataset.stock) && doc.querySelectorAll("#bill tr.lit").length;
  out.layoutLit = doc.querySelectorAll("#layouts path.lit").length;
  out.said = doc.getElementById("pointed").textContent;
  // The key / goes to the field, which filters by name; Escape clears it.
  const key = (e, key) => e.dispatchEvent(new win.KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));
  key(row, "/");
  out.fieldHeld = doc.activeElement.id === "wanted";
  const field = doc.getElementById("wanted"), open = (what) => [...doc.querySelectorAll(what)].filter((r) => r.getClientRects().length > 0);
  const all = open("#parts tbody tr").length;
  field.value = row.cells[0].textContent.toLowerCase();
  field.dispatchEvent(new win.Event("input"));
  out.filtered = open("#parts tbody tr").map((r) => r.cells[0].textContent);
  out.foundShapes = doc.querySelectorAll("#drawings path.found, #parts path.found").length;
  out.counted = doc.getElementById("found").textContent;
  key(field, "Enter");
  out.entered = doc.activeElement === row;
  key(doc.activeElement, "Escape");
  out.cleared = field.value === "" && open("#parts tbody tr").length === all && !doc.querySelector(".found, .lit");
  return out;
}
window.onload = () => {
  const all = [...document.querySelectorAll("iframe")].map(measure);
  document.getElementById("measured").textContent = JSON.stringify(all);
};
