import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const TOOL = '/usr/bin/rs274';

/** Missing on a contributor's machine: skipped. In CI it is never missing. */
export const rs274Missing = !existsSync(TOOL) && process.env['CI'] === undefined;

/** Straight moves as the stand-alone interpreter of Debian's linuxcnc-uspace says them, in its program's units. */
export function interpreted(text: string): readonly { fast: boolean; at: readonly number[] }[] {
  const folder = mkdtempSync(join(tmpdir(), 'flipwright-'));
  try {
    const file = join(folder, 'program.ngc');
    writeFileSync(file, text);
    const said = execFileSync(TOOL, ['-g', file], {
      encoding: 'utf8',
      cwd: folder,
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    return [...said.matchAll(/(STRAIGHT_TRAVERSE|STRAIGHT_FEED|ARC_FEED)\(([^)]*)\)/g)].map(
      ([, kind, numbers]) => {
        const values = numbers!.split(',').map(Number);
        // ARC_FEED(first end, second end, first axis, second axis, rotation, axis end, ...)
        const at = kind === 'ARC_FEED' ? [values[0]!, values[1]!, values[5]!] : values.slice(0, 3);
        return { fast: kind === 'STRAIGHT_TRAVERSE', at };
      },
    );
  } finally {
    rmSync(folder, { recursive: true });
  }
}
