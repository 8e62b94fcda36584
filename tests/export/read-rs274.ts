/**
 * Reads the little of RS-274 that a small controller takes, straight from the rules of the language
 * (nothing of the writer's), and refuses everything else.
 */
export interface ReadProgram {
  readonly units: 'mm' | 'inch';
  readonly comments: readonly string[];
  /** Places in mm, in order. */
  readonly moves: readonly ReadMove[];
  readonly pauses: number;
  readonly endsStopped: boolean;
}

export interface ReadMove {
  readonly fast: boolean;
  readonly spindle: number;
  readonly from: Xyz;
  readonly to: Xyz;
  readonly arc: { readonly x: number; readonly y: number; readonly clockwise: boolean } | null;
  readonly feedMmPerMin: number;
}

export interface Xyz {
  readonly x: number | null;
  readonly y: number | null;
  readonly z: number | null;
}

export function readRs274(text: string): ReadProgram {
  const moves: ReadMove[] = [];
  const comments: string[] = [];
  let scale: number | null = null;
  let motion: number | null = null;
  let speed = 0;
  let spindle = 0;
  let feed = 0;
  let pauses = 0;
  let ended = false;
  const modes = new Set<string>();
  let here: Xyz = { x: null, y: null, z: null };
  for (const raw of text.split('\n').slice(0, -1)) {
    if (ended) throw new Error(`after the end: ${raw}`);
    if (!/^[ -~]*$/.test(raw) || raw.length > 80) throw new Error(`line ${raw}`);
    const comment = /^\(([^()]*)\)$/.exec(raw);
    if (comment) {
      comments.push(comment[1]!);
      continue;
    }
    const words = [...raw.replaceAll(' ', '').matchAll(/([A-Z])([-+]?\d*\.?\d+)/g)];
    if (words.map(([all]) => all).join('') !== raw.replaceAll(' ', ''))
      throw new Error(`line ${raw}`);
    const axis = new Map<string, number>();
    let pause: number | null = null;
    for (const [, letter, digits] of words) {
      const value = Number(digits);
      if (letter === 'G') {
        if (value <= 3) motion = value;
        else if (value === 4) pause = value;
        else if (value === 20 || value === 21) scale = value === 20 ? 25.4 : 1;
        else if (value === 17 || value === 90 || value === 94) modes.add(`G${value}`);
        else throw new Error(`word G${value}`);
      } else if (letter === 'M') {
        if (value === 0) pauses++;
        else if (value === 2) ended = true;
        else if (value === 3) spindle = NaN;
        else if (value === 5) spindle = 0;
        else throw new Error(`word M${value}`);
      } else if (letter === 'S') speed = value;
      else if (letter === 'F') feed = value * scale!;
      else if ('XYZIJP'.includes(letter!)) axis.set(letter!, value);
      else throw new Error(`word ${letter}`);
    }
    if (Number.isNaN(spindle)) spindle = speed;
    if (pause !== null || ![...axis.keys()].some((key) => 'XYZIJ'.includes(key))) continue;
    if (scale === null || modes.size < 3) throw new Error('a move before its modes');
    const at = (key: string, old: number | null): number | null =>
      axis.has(key) ? axis.get(key)! * scale! : old;
    const to = { x: at('X', here.x), y: at('Y', here.y), z: at('Z', here.z) };
    if (motion === null) throw new Error('a move of no kind');
    if (motion > 0 && feed <= 0) throw new Error('a cut without a feed');
    let arc: ReadMove['arc'] = null;
    if (motion >= 2) {
      const centre = { x: here.x! + axis.get('I')! * scale, y: here.y! + axis.get('J')! * scale };
      const start = Math.hypot(here.x! - centre.x, here.y! - centre.y);
      const end = Math.hypot(to.x! - centre.x, to.y! - centre.y);
      if (Math.abs(start - end) > 0.005) throw new Error(`an arc of radius ${start} and ${end}`);
      arc = { ...centre, clockwise: motion === 2 };
    }
    moves.push({ fast: motion === 0, spindle, from: here, to, arc, feedMmPerMin: feed });
    here = to;
  }
  if (!ended) throw new Error('a program without an end');
  return {
    units: scale === 1 ? 'mm' : 'inch',
    comments,
    moves,
    pauses,
    endsStopped: spindle === 0,
  };
}
