// Measures, in a real browser, every page framed by this document: it is the
// outside check's eye and no part of the page.
"use strict";
function measure(frame) {
  const doc = frame.contentDocument, win = frame.contentWindow;
  const out = { width: frame.clientWidth, scroll: doc.documentElement.scrollWidth, svgs: 0, small: 0, outside: [], unfilled: 0, dashed: 0, colours: [] };
  for (const svg of doc.querySelectorAll("figure svg")) {
    out.svgs++;
    const at = svg.getBoundingClientRect(), size = svg.getAttribute("font-size");
    if (at.width < 1 || at.height < 1) out.outside.push("nothing to see");
    if (size && size * at.width / svg.viewBox.baseVal.width < 9.9) out.small++;
    for (const e of svg.querySelectorAll(":scope > text, :scope > path")) {
      const r = e.getBoundingClientRect();
      if (r.left < at.left - 1 || r.right > at.right + 1 || r.top < at.top - 1 || r.bottom > at.bottom + 1) out.outside.push(e.textContent || e.getAttribute("d"));
    }
    for (const e of svg.querySelectorAll(".missing, .spare")) {
      const id = /url\("?#([^")]*)/.exec(win.getComputedStyle(e).fill);
      if (!id || !doc.getElementById(id[1])) out.unfilled++;
    }
  }
  for (const name of ["old", "new", "same"]) {
    const style = win.getComputedStyle(doc.querySelector("figure path." + name));
    out.colours.push(style.stroke);
    if (style.strokeDasharray !== "none") out.dashed++;
  }
  return out;
}
window.onload = () => {
  const all = [...document.querySelectorAll("iframe")].map(measure);
  document.getElementById("measured").textContent = JSON.stringify(all);
};
