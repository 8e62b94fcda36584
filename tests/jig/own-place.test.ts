import { expect, it } from 'vitest';
import { placedForStops } from '../../src/jig/own-place.ts';
import { stopsOf } from '../../src/jig/stops.ts';
import { placingsOf } from '../../src/setup/place.ts';
import { newJobText, newShopText } from '../../src/job/starting.ts';
import { readTexts } from '../job/from-disk.ts';

/** The starting job with a higher blank, at a place of the reader's choosing or a stated one. */
function higher(heightMm: number, onBed = '') {
  const text = newJobText()
    .replace('150 ±0.3', `${heightMm} ±0.3`)
    .replace(/\nturn:/, `${onBed}\nturn:`);
  const read = readTexts(text, newShopText());
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const { job } = read.value;
  if (job.locating !== 'stops') throw new Error('no stops');
  return job;
}

it('a place that nobody stated is moved to where the stops can be screwed down', () => {
  for (const heightMm of [150, 160, 170, 200]) {
    const job = higher(heightMm);
    const placed = placedForStops(job);
    if (placed.locating !== 'stops') throw new Error('no stops');
    expect(stopsOf(placed, placingsOf(placed)).kind, `${heightMm}`).toBe('made');
    expect(placed.onBed.origin.kind).toBe('assumed');
  }
});

it('a stated place stays, even where no stop can stand', () => {
  const job = higher(160, '\non-bed: [5, 5]');
  expect(placedForStops(job)).toBe(job);
  expect(stopsOf(job, placingsOf(job)).kind).toBe('cannot');
});
