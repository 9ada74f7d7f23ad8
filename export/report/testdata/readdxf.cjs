// Reads a DXF file with the package dxf-parser and tells every circle and closed line
// as a run of places, with its layer.
const fs = require('fs');
const DxfParser = require('dxf-parser').default || require('dxf-parser');

const drawing = new DxfParser().parseSync(fs.readFileSync(process.argv[2], 'utf8'));

function arc(centre, radius, from, turn) {
  const n = Math.max(2, Math.ceil(Math.abs(turn) * 15));
  return Array.from({ length: n }, (_, i) => {
    const a = from + turn * i / n;
    return [centre[0] + radius * Math.cos(a), centre[1] + radius * Math.sin(a)];
  });
}

// A bulge is the tangent of a quarter of the arc's angle.
function bent(a, b) {
  if (!a.bulge) return [[a.x, a.y]];
  const turn = 4 * Math.atan(a.bulge);
  const height = Math.hypot(b.x - a.x, b.y - a.y) / 2 / Math.tan(turn / 2);
  const chord = Math.atan2(b.y - a.y, b.x - a.x);
  const centre = [(a.x + b.x) / 2 - height * Math.sin(chord), (a.y + b.y) / 2 + height * Math.cos(chord)];
  const from = Math.atan2(a.y - centre[1], a.x - centre[0]);
  return arc(centre, Math.hypot(a.x - centre[0], a.y - centre[1]), from, turn);
}

const rims = [];
for (const e of drawing.entities) {
  if (e.type === 'CIRCLE') {
    rims.push({ layer: e.layer, run: arc([e.center.x, e.center.y], e.radius, 0, 2 * Math.PI) });
  } else if (e.type === 'LWPOLYLINE' && e.shape) {
    rims.push({ layer: e.layer, run: e.vertices.flatMap((a, i) => bent(a, e.vertices[(i + 1) % e.vertices.length])) });
  }
}
console.log(JSON.stringify({ version: drawing.header.$ACADVER, units: drawing.header.$INSUNITS, rims }));
