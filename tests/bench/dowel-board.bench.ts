import jscad from '@jscad/modeling';
import { bench, describe } from 'vitest';
import { stlOf } from '../../src/export/stl.ts';
import { dowelBoard } from '../../src/jig/parts/dowel-board.ts';
import { partFacets } from '../../src/jig/parts/part.ts';
import { solidOfFacets } from '../../src/jig/solid.ts';
import { defaultJigSizes } from '../../src/job/jig-sizes.ts';
import { aJob } from '../jig/a-job.ts';
import { madeOf } from '../jig/program/some-programs.ts';

const sizes = { ...defaultJigSizes('dowel-board'), pitch: 16, columns: 20, rows: 15, thick: 12 };
const once = { iterations: 1, time: 0, warmupIterations: 0, warmupTime: 0 };

describe('a dowel board of 300 holes to STL', () => {
  bench(
    'from rings',
    () => {
      const [board] = madeOf(dowelBoard(aJob(), sizes));
      stlOf(solidOfFacets(partFacets(board!)));
    },
    { ...once, iterations: 3 },
  );

  bench(
    'by a boolean of the modelling library, holes united first, without words and seats',
    () => {
      const { primitives, booleans } = jscad;
      const holes = Array.from({ length: 300 }, (_, i) =>
        primitives.cylinder({
          radius: 3.05,
          height: 14,
          segments: 28,
          center: [(i % 20) * 16, Math.floor(i / 20) * 16, 6],
        }),
      );
      booleans.subtract(
        primitives.cuboid({ size: [340, 260, 12], center: [152, 112, 6] }),
        booleans.union(...holes),
      );
    },
    once,
  );
});
