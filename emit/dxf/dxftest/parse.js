// Has each file named on the command line read by dxf-parser, and prints what it found.
const fs = require('fs');
const Parser = require('dxf-parser').default || require('dxf-parser');

const point = (p) => [p.x, p.y];
const files = process.argv.slice(2).map((name) => {
  const dxf = new Parser().parseSync(fs.readFileSync(name, 'latin1'));
  const entities = dxf.entities.map((e) => {
    const said = { type: e.type, layer: e.layer };
    switch (e.type) {
      case 'CIRCLE':
        return { ...said, centre: point(e.center), radius: e.radius };
      case 'POLYLINE':
      case 'LWPOLYLINE':
        return { ...said, closed: e.shape, vertices: e.vertices.map((v) => [v.x, v.y, v.bulge || 0]) };
      case 'LINE':
        return { ...said, vertices: e.vertices.map((v) => [v.x, v.y, 0]) };
    }
    return { ...said, text: e.text };
  });
  const h = dxf.header;
  return {
    file: name, version: h.$ACADVER, unit: h.$INSUNITS, min: point(h.$EXTMIN), max: point(h.$EXTMAX),
    layers: Object.keys(dxf.tables.layer.layers), blocks: Object.keys(dxf.blocks || {}), entities,
  };
});
console.log(JSON.stringify(files));
