import fc from 'fast-check';
import { expect } from 'vitest';
import type { StopsJob } from '../../src/job/job.ts';
import { checkMesh } from '../../src/jig/mesh.ts';
import { screwNumbers, stopNumbers } from '../../src/jig/numbers.ts';
import { facetsOf, solidOf } from '../../src/jig/solid.ts';
import { stopFacets } from '../../src/jig/stop-solid.ts';
import type { Level, StopPart } from '../../src/jig/stop-part.ts';
import { bodiesOf, stopsOf } from '../../src/jig/stops.ts';
import { betweenEdgesMm, isInside, toEdgeMm, toOutlineMm } from '../../src/plane/distance.ts';
import { grown } from '../../src/plane/clip.ts';
import { signedAreaMm2 } from '../../src/plane/measure.ts';
import { rectangleOutline } from '../../src/plane/outline.ts';
import { moved } from '../../src/plane/move.ts';
import type { Placings } from '../../src/sweep/clearances.ts';
import { placed } from './a-job.ts';
import { manifoldOf } from './oracle.ts';

/** Everything that must hold of the stops of any job; the parts, so that a test can count them. */
export async function expectLawfulStops(job: StopsJob): Promise<readonly StopPart[]> {
  const placings = placed(job);
  const answer = stopsOf(job, placings);
  // A high stop cannot be milled in place when the nut would come down on it: another case is drawn.
  fc.pre(answer.kind === 'made' || !answer.because.includes('mills the faces'));
  if (answer.kind === 'cannot') throw new Error(`${answer.because}; ${answer.wouldFit}`);
  expectContactsAtTheirPlaces(job, placings, answer.parts);
  expectBodiesApart(job, answer.parts);
  for (const part of answer.parts) {
    expectWalls(part);
    expectHolesWideEnough(part);
    await expectClosed(part);
  }
  return answer.parts;
}

async function expectClosed(part: StopPart): Promise<void> {
  const facets = facetsOf(solidOf(part.profile));
  const check = checkMesh(facets);
  expect(check.openEdgeCount).toBe(0);
  expect(Math.abs(check.signedVolumeMm3 - volumeByLevelsMm3(part.profile.levels))).toBeLessThan(
    1e-9 * check.signedVolumeMm3,
  );
  // With its words engraved it is as closed, one piece, and lighter by them.
  const engraved = checkMesh(stopFacets(part));
  expect(engraved.openEdgeCount).toBe(0);
  if (part.words.length === 0) expect(engraved.signedVolumeMm3).toBe(check.signedVolumeMm3);
  else expect(engraved.signedVolumeMm3).toBeLessThan(check.signedVolumeMm3);
  expectOnePieceWhenEroded(part);
  const oracle = await manifoldOf(facets);
  expect(oracle.status).toBe('closed');
  expect(oracle.genus).toBe(part.screws.length + part.pins.length);
  // The other library keeps places in 24 bits: 2e-5 mm at 400 mm, over the whole skin.
  expect(Math.abs(oracle.volumeMm3 - check.signedVolumeMm3)).toBeLessThan(
    1e-5 * check.signedVolumeMm3,
  );
}

/** No wall thinner than the least: half of it taken off all round leaves as many pieces as before, one. */
function expectOnePieceWhenEroded(part: StopPart): void {
  for (const level of part.profile.levels) {
    const left = grown([level.outline, ...level.holes], -LEAST_WALL_MM / 2, 0.02).filter(
      (loop) => signedAreaMm2(loop) > 0,
    );
    expect(left).toHaveLength(1);
  }
}

/** Of a print, bench practice: 4 lines. */
const LEAST_WALL_MM = 1.6;

/** Between two levels every vertex runs straight, so the area is quadratic in z: Simpson is exact. */
function volumeByLevelsMm3(levels: readonly Level[]): number {
  const area = (level: Level): number =>
    [level.outline, ...level.holes].reduce((sum, loop) => sum + signedAreaMm2(loop), 0);
  return levels.slice(1).reduce((sum, high, i) => {
    const low = levels[i]!;
    const middle: Level = {
      zMm: (low.zMm + high.zMm) / 2,
      outline: low.outline.map((p, k) => half(p, high.outline[k]!)),
      holes: low.holes.map((hole, h) => hole.map((p, k) => half(p, high.holes[h]![k]!))),
    };
    const thick = high.zMm - low.zMm;
    return sum + (thick * (area(low) + 4 * area(middle) + area(high))) / 6;
  }, 0);
}

const half = (
  a: { x: number; y: number },
  b: { x: number; y: number },
): { x: number; y: number } => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/** Every contact of both placings lies on a land of some part, exactly on the placing's line. */
function expectContactsAtTheirPlaces(
  job: StopsJob,
  placings: Placings,
  parts: readonly StopPart[],
): void {
  const blank = moved(rectangleOutline(job.blank.widthMm, job.blank.heightMm, 0, 0.01), {
    x: job.blank.widthMm / 2,
    y: job.blank.heightMm / 2,
  });
  for (const { contacts } of [placings.frontUp, placings.backUp])
    for (const contact of contacts) {
      const part = parts.find((p) => p.lands.some((land) => land.contacts.includes(contact.id)));
      expect(part, `a part carries ${contact.id}`).toBeDefined();
      // The final face touches just there ...
      expect(toEdgeMm(contact.at, part!.body.outline)).toBeLessThan(1e-12 * 400);
      // ... and the printed one stands the allowance over it, in the blank: it is milled off.
      const level = part!.profile.levels.find(
        (l) => l.zMm > part!.band.lowMm + part!.allowanceMm - 1e-9 && l.zMm <= part!.band.highMm,
      )!;
      const arm = contact.kind === 'arm-end';
      if (!arm)
        expect(Math.abs(toEdgeMm(contact.at, level.outline) - part!.allowanceMm)).toBeLessThan(
          1e-9,
        );
    }
  for (const part of parts)
    for (const p of part.body.outline) expect(strictlyInside(p, job)).toBe(false);
  for (const corner of blank.filter((p) => nearACornerOf(parts, p)))
    for (const part of parts)
      expect(toOutlineMm(corner, part.body.outline)).toBeGreaterThanOrEqual(
        stopNumbers.betweenBackMm - 1e-9,
      );
}

const strictlyInside = (p: { x: number; y: number }, job: StopsJob): boolean =>
  p.x > 1e-9 && p.y > 1e-9 && p.x < job.blank.widthMm - 1e-9 && p.y < job.blank.heightMm - 1e-9;

/** A blank's corner in a stop's inside corner, as opposed to one past the end of an arm. */
function nearACornerOf(parts: readonly StopPart[], corner: { x: number; y: number }): boolean {
  return parts.some((part) => toOutlineMm(corner, part.body.outline) < 10);
}

function expectWalls(part: StopPart): void {
  for (const level of part.profile.levels) {
    expect(signedAreaMm2(level.outline)).toBeGreaterThan(0);
    for (const [i, hole] of level.holes.entries()) {
      expect(signedAreaMm2(hole)).toBeLessThan(0);
      expect(hole.every((p) => isInside(p, level.outline))).toBe(true);
      // Counterbores leave a thin rib at least; the foot is drawn in by its chamfer.
      expect(betweenEdgesMm(hole, level.outline)).toBeGreaterThan(
        stopNumbers.counterboreWallMm - stopNumbers.footChamferMm,
      );
      for (const other of level.holes.slice(i + 1))
        expect(betweenEdgesMm(hole, other)).toBeGreaterThan(stopNumbers.counterboreWallMm - 0.1);
    }
  }
  const foot = part.profile.levels.find((level) => level.zMm >= stopNumbers.footChamferMm)!;
  for (const hole of foot.holes.slice(0, part.screws.length))
    // Chords of circumscribed holes reach out by less than the chord tolerance.
    expect(betweenEdgesMm(hole, foot.outline)).toBeGreaterThan(
      stopNumbers.holeWallMm - stopNumbers.chordMm - 1e-9,
    );
}

/** A rod of the nominal size touches no chord of any hole, at either end of a slot's travel. */
function expectHolesWideEnough(part: StopPart): void {
  const rods = [
    ...part.screws.map(({ at, hole }) => {
      const travel = hole.kind === 'slot' ? hole.travelMm : 0;
      const along = hole.kind === 'slot' ? hole.along : 'x';
      const ends = [-travel, travel].map((by) => ({ ...at, [along]: at[along] + by }));
      return { ends, radiusMm: screwNumbers.M6.holeMm / 2 };
    }),
    ...part.pins.map((pin) => ({ ends: [pin.at], radiusMm: pin.diameterMm / 2 })),
  ];
  for (const level of part.profile.levels) {
    expect(level.holes).toHaveLength(rods.length);
    rods.forEach(({ ends, radiusMm }, i) => {
      for (const end of ends) {
        expect(isInside(end, level.holes[i]!)).toBe(true);
        expect(toEdgeMm(end, level.holes[i]!)).toBeGreaterThan(radiusMm - 1e-9);
      }
    });
  }
}

function expectBodiesApart(job: StopsJob, parts: readonly StopPart[]): void {
  const [first, second] = parts;
  if (first !== undefined && second !== undefined)
    expect(betweenEdgesMm(first.body.outline, second.body.outline)).toBeGreaterThan(
      stopNumbers.betweenPiecesMm - 1e-9,
    );
  for (const part of parts)
    for (const body of bodiesOf(part)) expect(body.highMm).toBeGreaterThan(body.lowMm);
  expect(parts.every((part) => part.body.highMm <= job.blank.thickMm - 1)).toBe(true);
}
