// A dowel board of 300 holes to STL: from rings, as it is built, and by booleans. Processor time.
import jscad from '@jscad/modeling';
import { stlOf } from '../../dist/export/stl.js';
import { plateSolid } from '../../dist/jig/plate/plate-solid.js';
import { roundedBox } from '../../dist/jig/plate/curve.js';

const [COLUMNS, ROWS, PITCH, RADIUS, THICK] = [20, 15, 16, 3.05, 12];

const seconds = (work) => {
  const began = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(began);
  return (user + system) / 1e6;
};

const places = Array.from({ length: COLUMNS * ROWS }, (_, i) => ({
  x: (i % COLUMNS) * PITCH,
  y: Math.floor(i / COLUMNS) * PITCH,
}));
const high = { x: (COLUMNS - 1) * PITCH + 18, y: (ROWS - 1) * PITCH + 18 };

const fromRings = () =>
  stlOf(
    plateSolid({
      name: 'board',
      thickMm: THICK,
      outline: roundedBox({ x: -18, y: -18 }, high, 3),
      holes: places.map((at) => ({ ends: [at], radiusMm: RADIUS, depthMm: null, seat: null })),
      words: [],
    }),
  );

const byBooleans = () => {
  const { primitives, booleans } = jscad;
  const holes = places.map(({ x, y }) =>
    primitives.cylinder({ radius: RADIUS, height: 14, segments: 28, center: [x, y, 6] }),
  );
  const middle = [(high.x - 18) / 2, (high.y - 18) / 2, 6];
  return booleans.subtract(
    primitives.cuboid({ size: [high.x + 18, high.y + 18, THICK], center: middle }),
    booleans.union(...holes),
  );
};

fromRings();
const rings = Math.min(...[1, 2, 3].map(() => seconds(fromRings)));
const booleans = seconds(byBooleans);
console.table([
  { what: 'dowel board of 300 holes to STL, from rings', seconds: rings.toFixed(2) },
  {
    what: 'the same solid by booleans, holes united first, not yet written',
    seconds: booleans.toFixed(2),
    'times ours': (booleans / rings).toFixed(1),
  },
]);
