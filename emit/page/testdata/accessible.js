// Has axe judge every page framed by this document, in which axe stands beside the page: it is
// the outside check's eye and no part of the page.
"use strict";
async function judged(frame) {
  const win = frame.contentWindow, { violations, passes } = await win.axe.run(win.document);
  const told = (v) => `${v.impact} ${v.id}: ${v.help}: ${v.nodes.length} times, as ${v.nodes[0].html.slice(0, 200)} (${v.nodes[0].failureSummary})`;
  return {
    width: frame.clientWidth, dark: win.matchMedia("(prefers-color-scheme: dark)").matches, passes: passes.length,
    serious: violations.filter((v) => v.impact === "serious" || v.impact === "critical").map(told),
    others: violations.filter((v) => v.impact !== "serious" && v.impact !== "critical").map(told),
  };
}
window.onload = async () => {
  const out = [];
  try {
    for (const frame of document.querySelectorAll("iframe")) out.push(await judged(frame));
    document.getElementById("measured").textContent = JSON.stringify(out);
  } catch (e) {
    document.getElementById("measured").textContent = String(e);
  }
};
