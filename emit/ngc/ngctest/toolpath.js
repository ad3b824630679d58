// Has each program named on the command line interpreted by gcode-toolpath, and
// prints its end, the box of its moves and the length of those at feed, in mm.
const fs = require('fs');
const Toolpath = require('gcode-toolpath');

for (const file of process.argv.slice(2)) {
  const box = { min: [Infinity, Infinity, Infinity], max: [-Infinity, -Infinity, -Infinity] };
  let end = [0, 0, 0], cut = 0, moves = 0;
  const visit = (...p) => p.forEach((v, i) => {
    box.min[i] = Math.min(box.min[i], v);
    box.max[i] = Math.max(box.max[i], v);
  });
  const at = (modal, p) => [p.x, p.y, p.z];
  const add = (modal, from, to, length) => {
    moves++;
    end = to;
    if (moves >= 2) visit(...to); // the first move begins where nobody knows
    if (modal.motion !== 'G0') cut += length;
  };
  const toolpath = new Toolpath({
    addLine: (modal, v1, v2) => {
      const from = at(modal, v1), to = at(modal, v2);
      add(modal, from, to, Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]));
    },
    addArcCurve: (modal, v1, v2, v0) => {
      const from = at(modal, v1), to = at(modal, v2), c = at(modal, v0);
      const r = Math.hypot(from[0] - c[0], from[1] - c[1]);
      const way = modal.motion === 'G3' ? 1 : -1;
      const start = Math.atan2(from[1] - c[1], from[0] - c[0]);
      let sweep = way * (Math.atan2(to[1] - c[1], to[0] - c[0]) - start);
      if (sweep <= 0) sweep += 2 * Math.PI;
      for (let k = 0; k < 4; k++) {
        const quarter = k * Math.PI / 2, gone = way * (quarter - start);
        if (((gone % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI) < sweep) {
          visit(c[0] + r * Math.cos(quarter), c[1] + r * Math.sin(quarter), to[2]);
        }
      }
      add(modal, from, to, Math.hypot(r * sweep, to[2] - from[2]));
    },
  });
  toolpath.loadFromStringSync(fs.readFileSync(file, 'utf8'));
  console.log(JSON.stringify({ end, box, cut }));
}
