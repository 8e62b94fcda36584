import {
  closeSync,
  fstatSync,
  fsyncSync,
  linkSync,
  openSync,
  readSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { LOG_HEAD } from '../job/readings/log-file.ts';
import { Refusal } from './exit.ts';

/**
 * Adds lines to a log, and makes the log when there is none. Nothing in it is ever rewritten: the lines
 * go to its end in one write, so that two writers do not mix and a kill leaves at most a last line
 * cut short; a line that was left so is ended first. Returns when the disk has them.
 * @throws Refusal when the log cannot be written.
 */
export function appendLog(path: string, lines: readonly string[]): void {
  try {
    startLog(path);
    const log = openSync(path, 'a+');
    try {
      const text = `${endsLine(log) ? '' : '\n'}${lines.join('')}`;
      writeSync(log, text);
      fsyncSync(log);
    } finally {
      closeSync(log);
    }
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown reason';
    throw new Refusal(`${path}: nothing was logged (${code})`);
  }
}

/** The head comes into being with the file: made aside and linked to its name, which only one writer can do. */
function startLog(path: string): void {
  const aside = `${path}.${process.pid}.new`;
  try {
    closeSync(openSync(path, 'r'));
    return;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  }
  writeFileSync(aside, LOG_HEAD);
  try {
    linkSync(aside, path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  } finally {
    rmSync(aside, { force: true });
  }
}

function endsLine(log: number): boolean {
  const { size } = fstatSync(log);
  if (size === 0) return true;
  const last = new Uint8Array(1);
  readSync(log, last, 0, 1, size - 1);
  return last[0] === 10;
}
