import { invariant, unreachable } from '../num/invariant.ts';
import type { DowelHoles, Job, Spread } from '../job/job.ts';
import type { Deviation } from '../setup/deviation.ts';
import { dowelHolesIn } from '../job/located.ts';
import { cause, onlyWith, type Cause } from './cause.ts';

/** What lets a blank lie a little elsewhere on its dowels or in its nest. */
export function looseCause(
  job: Job,
  deviation: Extract<
    Deviation,
    {
      kind:
        | 'laid'
        | 'clearance'
        | 'pin-size'
        | 'hole-size'
        | 'hole-place'
        | 'nest-clearance'
        | 'take-up';
    }
  >,
): Cause {
  switch (deviation.kind) {
    case 'laid':
      return cause('laid', 'how squarely the blank was laid', laidSpread(job));
    case 'clearance':
    case 'pin-size':
    case 'hole-size':
      return clearanceCause(dowels(job), deviation.kind);
    case 'hole-place':
      return cause('drilling', 'where the holes were drilled', dowels(job).drillError);
    case 'nest-clearance':
      return cause('nest clearance', 'the clearance of the nest', nest(job).clearance);
    case 'take-up':
      return cause(
        `play ${deviation.placing}`,
        `where in its play the blank comes to lie, ${PLACING[deviation.placing]}`,
        playSpread(job),
      );
    default:
      return unreachable(deviation);
  }
}

const PLACING = { 'front-up': 'front up', 'back-up': 'back up' } as const;

const ANYWHERE: Spread = {
  distribution: { kind: 'rectangular', low: -0.5, high: 0.5 },
  recurs: 'placing',
  origin: {
    kind: 'assumed',
    because: 'any place that the clearance allows is as likely as another',
  },
  text: 'anywhere',
};

/** A dowel that fills its hole leaves no play; in a nest, the size of the blank leaves some as well. */
function playSpread(job: Job): Spread {
  const holes = dowelHolesIn(job);
  if (holes === null) return ANYWHERE;
  const { clearance } = holes;
  const sizes = clearance.kind === 'stated' ? [clearance.spread] : [clearance.pin, clearance.hole];
  return onlyWith(sizes, ANYWHERE);
}

function clearanceCause(
  { clearance }: DowelHoles,
  kind: 'clearance' | 'pin-size' | 'hole-size',
): Cause {
  if (clearance.kind === 'stated') {
    return cause('dowel clearance', 'the clearance of the dowels', clearance.spread);
  }
  return kind === 'pin-size'
    ? cause('dowel diameter', 'the diameter of the dowels', clearance.pin)
    : cause('hole diameter', 'the diameter of the holes', clearance.hole);
}

function dowels(job: Job): DowelHoles {
  const found = dowelHolesIn(job);
  invariant(found !== null, 'no dowels to locate on');
  return found;
}

function nest(job: Job) {
  invariant(job.locating === 'nest', 'no nest to lie in');
  return job.nest;
}

const laidSpread = (job: Job): Spread =>
  job.locating === 'nest' ? job.nest.laid : dowels(job).laid;
