// Tells how resvg understands an SVG file: every use, circle, unit and group resolved
// into plain paths.
const fs = require('fs');
const { Resvg } = require('@resvg/resvg-js');

console.log(new Resvg(fs.readFileSync(process.argv[2], 'utf8'), { font: { loadSystemFonts: false } }).toString());
