// Measures, in a real browser, the texts of every drawing in this document: it is the outside
// check's eye and no part of a drawing.
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
function measure(svg) {
  const found = [];
  const texts = [...svg.querySelectorAll("text")].map((e) => ({ said: e.textContent, at: corners(e) }));
  const w = svg.clientWidth, h = svg.clientHeight;
  texts.forEach((t, i) => {
    texts.slice(0, i).forEach((u) => {
      if (!apart(t.at, u.at) && !apart(u.at, t.at)) found.push(t.said + " meets " + u.said);
    });
    if (t.at.some((p) => p.x < 0 || p.y < 0 || p.x > w || p.y > h)) found.push(t.said + " is cut off");
  });
  return { texts: texts.length, found };
}
const all = [...document.querySelectorAll("svg")].map(measure);
// The check itself must be able to fail: a text set twice is found once more.
const text = document.querySelector("svg text"), svg = text.closest("svg");
text.parentNode.insertBefore(text.cloneNode(true), text);
const twin = measure(svg).found.length - all[0].found.length;
document.getElementById("measured").textContent = JSON.stringify({ twin, all });
