"use strict";
(() => {
  const field = document.getElementById("wanted");
  if (!field) return; // a page without a build
  const most = 300; // rows that are unfolded at once

  // unfold shows of the lists that fold those with rows that are looked for: unfolded where they are few,
  // and the first in any case.
  function unfold() {
    const on = field.value.trim() !== "";
    for (const section of ["parts", "cuts"]) {
      let left = most;
      for (const list of document.querySelectorAll("#" + section + " .fold")) {
        const rows = on ? list.querySelectorAll("tbody tr:not([hidden])").length : 0;
        list.hidden = on && rows === 0 && list.childElementCount > 1; // one that is yet to be asked for may have some
        if (rows > 0 && (left === most || rows <= left)) list.open = true;
        left -= rows;
      }
    }
  }
  field.addEventListener("input", unfold);
  document.addEventListener("keydown", (e) => {
    if (e.key === "Escape") unfold();
  });

  // The key Tab stops at a row of each list that is unfolded.
  function stop(list) {
    const rows = list.querySelectorAll("tr[data-part]:not([hidden])");
    if (rows.length > 0 && ![...rows].some((r) => r.tabIndex === 0)) rows[0].tabIndex = 0;
  }
  document.addEventListener("toggle", (e) => {
    if (e.target.matches("#parts .fold[open]")) stop(e.target);
  }, true);
  document.addEventListener("redrawn", () => {
    unfold();
    for (const list of document.querySelectorAll("#parts .fold[open]")) stop(list);
  });
})();
