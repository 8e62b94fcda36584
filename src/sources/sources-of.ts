import { invariant, InvariantError, unreachable } from '../num/invariant.ts';
import { limitsOf } from '../num/spread-of.ts';
import type { Cutter, DialledAxis, Feature, Fence, Job, Made, Spread, ZeroXy } from '../job/job.ts';
import { fenceIn, jigCutterIn } from '../job/located.ts';
import type { Axis, Deviation, PlacingKey } from '../setup/deviation.ts';
import { cause, isNil, onlyWith, type Cause } from './cause.ts';
import { heightCause } from './height-cause.ts';
import { looseCause } from './loose-cause.ts';
import type { Source } from './source.ts';

/** Every source behind the deviations that a set-up's model asks for; those that are nil are left out. */
export function sourcesOf(job: Job, deviations: readonly Deviation[]): readonly Source[] {
  const byId = new Map<string, Source & { deviations: number[] }>();
  deviations.forEach((deviation, index) => {
    const { id, words, spread } = causeOf(job, deviation);
    if (isNil(spread)) return;
    const known = byId.get(id);
    if (known !== undefined) {
      known.deviations.push(index);
      return;
    }
    const { distribution, recurs, origin, text } = spread;
    byId.set(id, { id, words, text, distribution, recurs, origin, deviations: [index] });
  });
  return [...byId.values()];
}

function causeOf(job: Job, deviation: Deviation): Cause {
  const { blank, hold } = job;
  const { machine } = job.shop;
  switch (deviation.kind) {
    case 'machine-lean':
      return cause('machine lean', "the machine's Y axis leaning", machine.lean);
    case 'scale':
      return deviation.axis === 'x'
        ? cause('scale X', "the machine's scale along X", machine.scaleX)
        : cause('scale Y', "the machine's scale along Y", machine.scaleY);
    case 'cutter-lean':
      return deviation.axis === 'x'
        ? cause('cutter lean X', 'the cutter leaning along X', machine.cutterLeanX)
        : cause('cutter lean Y', 'the cutter leaning along Y', machine.cutterLeanY);
    case 'repeatability':
      return cause('repeatability', "the machine's repeatability", machine.repeatability);
    case 'local-error':
      return cause('local error', "the axes' errors along their travel", machine.local.spread);
    case 'milled-face':
      // The same figure, but a face is milled once for all parts.
      return cause('milled faces', "the machine's repeatability where it milled the stops", {
        ...machine.repeatability,
        recurs: 'setup',
      });
    case 'lost-motion':
      return cause('lost motion', 'lost motion of the drives', machine.lostMotion);
    case 'cutter-radius':
      return cause(
        `radius of ${deviation.cutter}`,
        `the effective radius of the cutter ${deviation.cutter}`,
        cutterNamed(job, deviation.cutter).radiusError,
      );
    case 'width':
      return cause('blank width', "the blank's length along X", blank.widthSpread);
    case 'height':
      return cause('blank height', "the blank's length along Y", blank.heightSpread);
    case 'thickness':
      return cause('blank thickness', "the blank's thickness", blank.thickSpread);
    case 'square':
      return cause('blank square', 'the blank being out of square', blank.squareSpread);
    case 'taper':
      return deviation.axis === 'x'
        ? cause('taper X', 'left and right edges not parallel', blank.taperXSpread)
        : cause('taper Y', 'lower and upper edges not parallel', blank.taperYSpread);
    case 'bevel':
      return cause('bevel', "bevel of the blank's edges", blank.bevelSpread);
    case 'crook':
      return cause('crook', "crook of the blank's edges", blank.crookSpread);
    case 'bump':
      return cause('bumps', 'bumps on the edges where they touch', blank.bumpSpread);
    case 'movement':
      if (deviation.axis === 'both')
        return cause('movement', 'the wood moving between placings', largerMovement(blank));
      return deviation.axis === 'x'
        ? cause('movement X', 'the wood moving along X between placings', blank.movementX)
        : cause('movement Y', 'the wood moving along Y between placings', blank.movementY);
    case 'fence-angle':
      return cause('fence angle', 'the fence not parallel to the X travel', setMade(job).angle);
    case 'stop-square':
      return cause('stop square', 'the side stop not square to the fence', setMade(job).square);
    case 'spacing':
      return cause('stop spacing', 'the spacing of the two side stops', setMade(job).spacing);
    case 'seat-gap':
      return cause('seat gaps', 'chips and burrs at the contacts', seatGapOf(job));
    case 'give':
      return cause('stop give', 'the stops giving under the push', fence(job).give);
    case 'clamp-drag':
      return cause('clamp drag', 'clamps dragging the blank off the stops', hold.clampDrag);
    case 'rock':
      return cause(
        'rocking',
        'a bulging edge rocking on the arm',
        onlyWith([blank.crookSpread], ROCKING),
      );
    case 'zero-touch':
      return cause(
        `zero touch ${deviation.placing}`,
        `finding the zero of the ${deviation.placing} placing`,
        touchSpread(job, deviation.placing),
      );
    case 'dialled':
      return cause(
        `dialled ${deviation.axis}`,
        `how well the offset dialled in along ${deviation.axis.toUpperCase()} is known`,
        dialledSpread(job, deviation.axis),
      );
    case 'calipered':
      return cause(
        `calipered ${deviation.axis}`,
        `calipering each blank along ${deviation.axis.toUpperCase()}`,
        caliperedSpread(job, deviation.axis),
      );
    case 'of-test-piece':
      throw new InvariantError('what came with a test piece has its causes in dialled.ts');
    case 'zero-return':
      return cause(
        'zero return',
        'the zero coming back after homing or power-off',
        returnSpread(job),
      );
    case 'push-off': {
      const { cutter } = cutNamed(job, deviation.cut);
      return cause(
        `push-off of ${cutter.name}`,
        `the cutter ${cutter.name} being pushed off the wall`,
        cutter.pushOff,
      );
    }
    case 'tip-flat':
      return cause(
        `tip flat of ${deviation.cutter}`,
        `the flat at the tip of ${deviation.cutter}`,
        tipFlat(cutterNamed(job, deviation.cutter)),
      );
    case 'laid':
    case 'clearance':
    case 'pin-size':
    case 'hole-size':
    case 'hole-place':
    case 'nest-clearance':
    case 'take-up':
      return looseCause(job, deviation);
    case 'thickness-taper':
    case 'cup':
    case 'cup-side':
    case 'swarf':
    case 'bed-lean':
    case 'bed-height':
    case 'z-touch':
      return heightCause(job, deviation);
    default:
      return unreachable(deviation);
  }
}

/** A blank that bulges may come to rest anywhere between touching one end of an arm and the other. */
const ROCKING: Spread = {
  distribution: { kind: 'rectangular', low: 0, high: 1 },
  recurs: 'placing',
  origin: { kind: 'assumed', because: 'any rest between the two ends is as likely as another' },
  text: 'anywhere',
};

const largerMovement = ({ movementX, movementY }: Job['blank']): Spread =>
  limitsOf(movementX.distribution)[1] > limitsOf(movementY.distribution)[1] ? movementX : movementY;

function cutterNamed(job: Job, name: string): Cutter {
  const ofJig = jigCutterIn(job);
  const all = ofJig === null ? job.shop.cutters : [ofJig, ...job.shop.cutters];
  const cutter = all.find((candidate) => candidate.name === name);
  invariant(cutter !== undefined, `no cutter ${name}`);
  return cutter;
}

function fence(job: Job): Fence {
  const found = fenceIn(job);
  invariant(found !== null, 'no fence to push against');
  return found;
}

function seatGapOf(job: Job): Spread {
  return job.locating === 'nest' ? job.nest.seatGap : fence(job).seatGap;
}

function setMade(job: Job): Exclude<Made, { kind: 'milled-in-place' }> {
  const { made } = fence(job);
  invariant(made.kind !== 'milled-in-place', 'milled stops have no angle, square or spacing');
  return made;
}

function zeroXy(job: Job, placing: PlacingKey): ZeroXy {
  return placing === 'front-up' ? job.zero.frontUp.xy : job.zero.backUp.xy;
}

function cutNamed(job: Job, cut: string): Feature {
  const found = job.features.find(({ name }) => cut === `feature ${name}`);
  invariant(found !== undefined, `no feature for ${cut}`);
  return found;
}

function tipFlat({ name, vee }: Cutter): Spread {
  invariant(vee !== null, `${name} has no tip`);
  return vee.tipFlatMm;
}

function touchSpread(job: Job, placing: PlacingKey): Spread {
  const xy = zeroXy(job, placing);
  invariant('tool' in xy, `${placing} is not touched`);
  return xy.tool.spread;
}

function returnSpread(job: Job): Spread {
  const extra = [zeroXy(job, 'front-up'), zeroXy(job, 'back-up')].flatMap((xy) =>
    xy.kind === 'kept' && xy.extra !== null ? [xy.extra] : [],
  )[0];
  invariant(extra !== undefined, 'a zero that is not held comes back with a spread');
  return extra;
}

function dialledOn(job: Job, axis: Axis): DialledAxis | null {
  return job.dialled?.[axis] ?? null;
}

function dialledSpread(job: Job, axis: Axis): Spread {
  const sd = dialledOn(job, axis)?.readingMm ?? 0;
  return measuredSpread(job, sd, 'setup');
}

function caliperedSpread(job: Job, axis: Axis): Spread {
  return measuredSpread(job, dialledOn(job, axis)?.calipered ?? 0, 'part');
}

/** An error of reading, of which only its sd is known. */
function measuredSpread(job: Job, sd: number, recurs: Spread['recurs']): Spread {
  return {
    distribution: sd === 0 ? { kind: 'exactly', value: 0 } : { kind: 'normal', mean: 0, sd },
    recurs,
    origin: { kind: 'stated', file: job.dialled?.file ?? '', line: 1 },
    text: `${String(Number(sd.toFixed(4)))} sd, measured ${job.dialled?.measured ?? ''}`,
  };
}
