// Paints an SVG file with resvg, so many pixels to the unit of its view box, and
// writes how much of each pixel is covered, a byte each.
const fs = require('fs');
const { Resvg } = require('@resvg/resvg-js');

const [file, perMM, widthMM, out] = process.argv.slice(2);
const picture = new Resvg(fs.readFileSync(file, 'utf8'), {
  fitTo: { mode: 'width', value: Math.round(perMM * widthMM) },
  font: { loadSystemFonts: false },
}).render();
const pixels = picture.pixels;
const covered = Buffer.alloc(pixels.length / 4);
for (let i = 0; i < covered.length; i++) covered[i] = pixels[4 * i + 3];
fs.writeFileSync(out, covered);
console.log(JSON.stringify({ width: picture.width, height: picture.height }));
