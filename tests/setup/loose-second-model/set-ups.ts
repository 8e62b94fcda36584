import type {
  Clearance,
  DowelHoles,
  Edge,
  Job,
  Made,
  Shape,
  TakeUp,
  ZeroXy,
} from '../../../src/job/job.ts';
import { keysOf, type Off } from '../misalign.ts';
import { randomsOf } from '../loose-play/numbers.ts';
import { inNest, onDowels, onFenceAndDowel } from '../loose-job.ts';
import { FLAT6, NONE, PAPER } from '../plain-job.ts';
import type { XY } from '../second-model/vectors.ts';

/** A loose set-up whose pose is determined, with everything off at once. */
export interface LooseSetUp {
  readonly job: Job;
  readonly off: Off;
  readonly at: XY;
  readonly kind: 'dowels' | 'fence-and-dowel' | 'nest' | 'part-nest';
  readonly take: 'bound' | 'pushed' | 'turned';
}

const TAKES = ['bound', 'pushed', 'turned'] as const;
const KINDS = ['dowels', 'fence-and-dowel', 'nest', 'part-nest'] as const;

/** Set-up number `seed`: all ways of locating and of taking up play in turn, the rest by chance. */
export function looseSetUp(seed: number): LooseSetUp {
  const next = randomsOf(seed);
  const oneOf = <T>(...all: readonly T[]): T => all[Math.floor(next() * all.length)]!;
  const kind = KINDS[seed % 4]!;
  const isNest = kind === 'nest' || kind === 'part-nest';
  // A blank that does not go into its nest is not in the second model.
  const take = isNest ? TAKES[1 + (Math.floor(seed / 4) % 2)]! : TAKES[Math.floor(seed / 4) % 3]!;
  const aboutX = next() < 0.5;
  const widthMm = 150 + Math.floor(200 * next());
  const heightMm = 140 + Math.floor(150 * next());
  const drilled = oneOf<DowelHoles['drilled']>('with-the-blank', 'separately');
  const made = oneOf<Made['kind']>('set-by-hand', 'on-bed-pins', 'milled-in-place');
  const at = { x: widthMm * next(), y: heightMm * next() };
  const touched = (): ZeroXy => {
    const place = { x: widthMm * (0.2 + 0.6 * next()), y: heightMm * (0.2 + 0.6 * next()) };
    return { kind: oneOf('edges', 'middle'), at: oneOf(null, place), tool: PAPER };
  };
  const kept = (): ZeroXy => ({ kind: 'kept', how: oneOf('held', 're-homed'), extra: NONE });
  const own: ZeroXy | null =
    kind === 'nest' || kind === 'part-nest'
      ? { kind: 'nest' }
      : drilled === 'separately' && (kind === 'dowels' || made === 'milled-in-place')
        ? { kind: 'dowels' }
        : null;
  const freeFirst = kind === 'part-nest' || (kind === 'dowels' && drilled === 'with-the-blank');
  const first = freeFirst || own === null ? touched() : oneOf(own, touched());
  const second =
    kind === 'part-nest' ? oneOf(own!, kept()) : oneOf(own ?? kept(), kept(), touched());
  const set = { aboutX, backFirst: next() < 0.5, first, second };
  const along = aboutX ? (['near', 'far'] as const) : (['left', 'right'] as const);
  const takeUp: TakeUp =
    take !== 'pushed'
      ? 'anywhere'
      : kind === 'fence-and-dowel'
        ? oneOf(...along)
        : oneOf('left', 'right', 'near', 'far');
  const sizes: Clearance = { kind: 'sizes', pin: NONE, hole: NONE };
  const clearance = oneOf<Clearance>({ kind: 'stated', spread: NONE }, sizes);
  const fit = { drilled, takeUp, clearance };
  const base = (): Job => {
    switch (kind) {
      case 'dowels':
        return onDowels({ ...fit, at: dowelsAt(next, aboutX, widthMm, heightMm) }, set);
      case 'fence-and-dowel':
        return fenceJob(next, set, made, fit, widthMm, heightMm);
      case 'nest':
        return inNest({ takeUp }, set);
      case 'part-nest':
        return inNest({ takeUp, around: 'body' }, set);
    }
  };
  const blankless = base();
  const job = {
    ...blankless,
    blank: {
      ...blankless.blank,
      widthMm,
      heightMm,
      widthAtYMm: heightMm * next(),
      heightAtXMm: widthMm * next(),
    },
    features: [
      {
        name: 'body',
        face: set.backFirst ? ('back' as const) : ('front' as const),
        shape: bodyShape(next),
        at: { x: widthMm * 0.45, y: heightMm * 0.55 },
        turnedRad: next() - 0.5,
        cut: 'profile-outside' as const,
        depthMm: 24,
        through: true,
        cutter: oneOf(FLAT6, { ...FLAT6, name: 'flat 3', diameterMm: 3 }),
      },
    ],
  };
  return { job, off: offOf(job, kind, take, next), at, kind, take };
}

function bodyShape(next: () => number): Shape {
  if (next() < 0.5)
    return {
      kind: 'rectangle',
      widthMm: 60 + 30 * next(),
      heightMm: 50 + 20 * next(),
      cornerRadiusMm: 0,
    };
  // Five corners round an ellipse, a little out of their places.
  const vertices = Array.from({ length: 5 }, (_, k) => {
    const rad = ((k + 0.4 * next()) / 5) * 2 * Math.PI;
    return { x: 50 * Math.cos(rad), y: 35 * Math.sin(rad) };
  });
  return { kind: 'polygon', vertices };
}

/** Two to four places that fall on each other when turned about a line off the middle. */
function dowelsAt(
  next: () => number,
  aboutX: boolean,
  widthMm: number,
  heightMm: number,
): readonly XY[] {
  const [across, along] = aboutX ? [heightMm, widthMm] : [widthMm, heightMm];
  const line = across * (0.42 + 0.16 * next());
  const arm = across * (0.2 + 0.15 * next());
  const [low, high] = [along * (0.1 + 0.15 * next()), along * (0.65 + 0.25 * next())];
  const sets = [
    [
      [line, low],
      [line, high],
    ],
    [
      [line - arm, low],
      [line + arm, low],
    ],
    [
      [line, high],
      [line - arm, low],
      [line + arm, low],
    ],
    [
      [line - arm, low],
      [line + arm, high],
      [line + arm, low],
      [line - arm, high],
    ],
  ] as const;
  const chosen = sets[Math.floor(next() * sets.length)]!;
  return chosen.map(([u, v]) => (aboutX ? { x: v, y: u } : { x: u, y: v }));
}

function fenceJob(
  next: () => number,
  set: Parameters<typeof onFenceAndDowel>[1] & object,
  made: Made['kind'],
  fit: Parameters<typeof onFenceAndDowel>[0],
  widthMm: number,
  heightMm: number,
): Job {
  const [alongMm, depthMm] = set.aboutX === true ? [heightMm, widthMm] : [widthMm, heightMm];
  const at = { u: alongMm * (0.46 + 0.08 * next()), v: depthMm * (0.3 + 0.5 * next()) };
  const hole = set.aboutX === true ? { x: at.v, y: at.u } : { x: at.u, y: at.v };
  const job = onFenceAndDowel({ ...fit, at: [hole] }, set);
  if (job.locating !== 'fence-and-dowel') throw new Error('a fence and a dowel');
  const edges: readonly Edge[] = set.aboutX === true ? ['left', 'right'] : ['lower', 'upper'];
  const [from, to] = [alongMm * (0.2 + 0.15 * next()), alongMm * (0.6 + 0.2 * next())];
  const none = { angle: NONE, square: NONE, spacing: NONE };
  return {
    ...job,
    fenceAndDowel: {
      ...job.fenceAndDowel,
      fence: edges[next() < 0.5 ? 0 : 1]!,
      fenceTouch:
        next() < 0.5
          ? { kind: 'buttons', atMm: [from, to] }
          : { kind: 'arm', fromMm: from, toMm: to },
      band: next() < 0.5 ? { kind: 'plain', heightMm: 9 } : { kind: 'narrow', touchHeightMm: 14 },
      made: made === 'milled-in-place' ? { kind: made, cutter: FLAT6 } : { kind: made, ...none },
    },
  };
}

const LEAN = /^(machine-lean|scale|cutter-lean|square|taper|bevel|fence-angle|laid|movement)/;
const SIZE_MM = 0.08;
const SIZE_LEAN = 8e-4;

/** Values for every deviation that the production model asks for; what is loose, by how play is to be taken up. */
function offOf(
  job: Job,
  kind: LooseSetUp['kind'],
  take: LooseSetUp['take'],
  next: () => number,
): Off {
  const turns = { 'front-up': next() < 0.5 ? -0.5 : 0.5, 'back-up': next() < 0.5 ? -0.5 : 0.5 };
  return Object.fromEntries(
    keysOf(job).map((key) => {
      const value = 2 * next() - 1;
      const size = Math.abs(value);
      const [name, placing, part] = key.split('/') as [string, keyof typeof turns, string];
      if (name === 'take-up') {
        const told = kind === 'fence-and-dowel' ? 'along' : 'turn';
        return [key, take === 'turned' && part === told ? turns[placing] : 0];
      }
      if (name === 'clearance') return [key, take === 'bound' ? -size : 1 + size];
      if (name === 'hole-size') return [key, take === 'bound' ? -1 : 1 + size];
      if (name === 'nest-clearance') return [key, take === 'bound' ? -2 : 1.2 + size];
      if (name === 'rock') return [key, size];
      if (name === 'crook') return [key, value * 3e-4];
      if (LEAN.test(key)) return [key, value * SIZE_LEAN];
      if (/^(seat-gap|give|clamp-drag)/.test(key)) return [key, size * SIZE_MM];
      return [key, value * SIZE_MM];
    }),
  );
}
