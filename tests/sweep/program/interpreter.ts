import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A place that an independent interpreter of RS-274 goes to, mm. */
export interface Reached {
  readonly kind: 'rapid' | 'feed' | 'arc';
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** The command of the stand-alone interpreter (Debian package linuxcnc-uspace), or null when it is not installed. */
export function interpreterIsThere(): boolean {
  try {
    execFileSync('which', ['rs274'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** What the interpreter makes of a program: its raw words, to be kept or read. */
export function interpreted(text: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'program-'));
  try {
    const file = join(folder, 'p.ngc');
    writeFileSync(file, text);
    return execFileSync('rs274', ['-g', file], { encoding: 'utf8', cwd: folder, stdio: 'pipe' });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The places of its words, in order, mm. */
export function reachedIn(words: string): readonly Reached[] {
  let per = 1;
  let plane = 'XY';
  return words.split('\n').flatMap((line): readonly Reached[] => {
    if (line.includes('CANON_UNITS_INCHES')) per = 25.4;
    if (line.includes('CANON_UNITS_MM')) per = 1;
    plane = /CANON_PLANE_(XY|XZ|YZ)/.exec(line)?.[1] ?? plane;
    const move = /(STRAIGHT_TRAVERSE|STRAIGHT_FEED|ARC_FEED)\(([^)]*)\)/.exec(line);
    if (move === null) return [];
    const v = move[2]!.split(',').map((text) => Number(text) * per);
    if (move[1] !== 'ARC_FEED') {
      return [
        { kind: move[1] === 'STRAIGHT_FEED' ? 'feed' : 'rapid', x: v[0]!, y: v[1]!, z: v[2]! },
      ];
    }
    // first end, second end, first centre, second centre, turns, third end: in the plane's own axes.
    const [first, second, third] = [v[0]!, v[1]!, v[5]!];
    const at =
      plane === 'XY'
        ? { x: first, y: second, z: third }
        : plane === 'XZ'
          ? { z: first, x: second, y: third }
          : { y: first, z: second, x: third };
    return [{ kind: 'arc', ...at }];
  });
}
