// Reads a DXF file with the package dxf-parser and tells what it found, layer by
// layer: marks, the area that closed lines and circles enclose, and where they lie.
const fs = require('fs');
const DxfParser = require('dxf-parser').default || require('dxf-parser');

const drawing = new DxfParser().parseSync(fs.readFileSync(process.argv[2], 'utf8'));
const layers = {};

// A bulge is the tangent of a quarter of the arc's angle.
function enclosed(vertices) {
  let sum = 0;
  vertices.forEach((a, i) => {
    const b = vertices[(i + 1) % vertices.length];
    sum += (a.x * b.y - b.x * a.y) / 2;
    if (a.bulge) {
      const chord = Math.hypot(b.x - a.x, b.y - a.y);
      const angle = 4 * Math.atan(a.bulge);
      const radius = chord / (2 * Math.sin(angle / 2));
      sum += radius * radius * (angle - Math.sin(angle)) / 2;
    }
  });
  return sum;
}

for (const e of drawing.entities) {
  const l = layers[e.layer] = layers[e.layer] || { circles: [], lines: 0, area: 0, length: 0, box: [Infinity, Infinity, -Infinity, -Infinity] };
  const grow = (x, y) => {
    l.box = [Math.min(l.box[0], x), Math.min(l.box[1], y), Math.max(l.box[2], x), Math.max(l.box[3], y)];
  };
  if (e.type === 'CIRCLE') {
    l.circles.push([e.center.x, e.center.y, e.radius]);
    grow(e.center.x - e.radius, e.center.y - e.radius);
    grow(e.center.x + e.radius, e.center.y + e.radius);
  } else if (e.type === 'LWPOLYLINE') {
    l.lines++;
    if (e.shape) {
      l.area += enclosed(e.vertices);
      e.vertices.forEach((a, i) => {
        const b = e.vertices[(i + 1) % e.vertices.length];
        l.length += Math.hypot(b.x - a.x, b.y - a.y);
      });
    }
    e.vertices.forEach(v => grow(v.x, v.y));
  }
}
const declared = Object.keys(drawing.tables.layer.layers);
console.log(JSON.stringify({ version: drawing.header.$ACADVER, units: drawing.header.$INSUNITS, declared, layers }));
