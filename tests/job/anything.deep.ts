import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultText, filesNamedBy, readJob } from '../../src/job/read.ts';
import { JOB, SHOP } from './sound.ts';

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Reads, and holds the answer to what every answer must be. */
function answer(job: Uint8Array, shop: Uint8Array): void {
  const file = { name: 'job.yaml', bytes: job };
  filesNamedBy(file);
  const read = readJob(file, new Map([['shop.yaml', shop]]));
  if (read.ok) {
    expect(numbersIn(read.value.job).filter((number) => !Number.isFinite(number))).toEqual([]);
    return;
  }
  expect(read.faults.length).toBeGreaterThan(0);
  for (const fault of read.faults) {
    expect(faultText(fault)).toMatch(/^(job|shop|[^:]*)\.?[^:]*:\d+:\d+: \S/s);
    expect(fault.line).toBeGreaterThanOrEqual(1);
    expect(fault.message).not.toMatch(/undefined|\[object|null is/);
  }
}

function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

describe('whatever is handed in', () => {
  it('any bytes are a job or faults, never an exception', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        answer(bytes, encode(SHOP));
      }),
      { seed: 2, numRuns: 120 },
    );
  });

  it('any text is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
        answer(encode(text), encode(SHOP));
      }),
      { seed: 2, numRuns: 120 },
    );
  });

  it('a sound job with any one piece of it written otherwise is', () => {
    const words = [JOB, readFileSync('tests/job/every-shape.yaml', 'utf8')].map((text) =>
      text.split(/(?<=[\s,[\]{}:])/),
    );
    const stray = fc.oneof(
      fc.constantFrom(
        '',
        '-1',
        '0',
        '1e9',
        '.nan',
        '~',
        'true',
        '[]',
        '{}',
        '[1, 2]',
        '{a: 1}',
        '"',
        '#',
        '- ',
      ),
      fc.constantFrom(
        '__proto__: 1',
        'constructor',
        'toString: {}',
        '*a',
        '&a',
        '!!binary x',
        '|',
        '<<: 1',
        '±',
      ),
      fc.string({ maxLength: 6 }),
    );
    fc.assert(
      fc.property(fc.nat(), fc.nat(), stray, fc.boolean(), (which, at, piece, isShop) => {
        const source = isShop ? SHOP.split(/(?<=[\s,[\]{}:])/) : words[which % words.length]!;
        const changed = source.with(at % source.length, piece).join('');
        if (isShop) answer(encode(JOB), encode(changed));
        else answer(encode(changed), encode(SHOP));
      }),
      { seed: 3, numRuns: 200 },
    );
  });
});
