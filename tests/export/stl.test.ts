import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { stlOf } from '../../src/export/stl.ts';
import { checkMesh } from '../../src/jig/mesh.ts';
import { facetsOf, snapGridMm, solidOf } from '../../src/jig/solid.ts';
import type { Profile, StopPart } from '../../src/jig/stop-part.ts';
import { stopsOf } from '../../src/jig/stops.ts';
import type { StopsJob } from '../../src/job/job.ts';
import { aJob, placed } from '../jig/a-job.ts';
import { readStl } from './read-stl.ts';

const handSet = aJob();
const milled = aJob({
  made: 'milled-in-place',
  stops: {
    corner: { frontUp: 'near-left', backUp: 'near-right' },
    band: { kind: 'narrow', touchHeightMm: 12 },
  },
});

function partsOf(job: StopsJob): readonly StopPart[] {
  const answer = stopsOf(job, placed(job));
  if (answer.kind === 'cannot') throw new Error(answer.because);
  return answer.parts;
}

const all = [...partsOf(handSet), ...partsOf(milled)].map((part) => {
  const solid = solidOf(part.profile);
  const bytes = stlOf(solid);
  return { part, solid, gridMm: snapGridMm(solid), bytes, read: readStl(bytes) };
});

describe('an STL file of a stop', () => {
  it('is closed and rightly wound when it is read back', () => {
    expect(all).toHaveLength(3);
    for (const { solid, gridMm, read: facets } of all) {
      const read = checkMesh(facets);
      expect(read.openEdgeCount).toBe(0);
      const { signedVolumeMm3 } = checkMesh(facetsOf(solid));
      // Every place moves by half a grid at most: over the whole skin, less than size x grid x size.
      const skinMm2 = 4 * 400 * 100;
      expect(Math.abs(read.signedVolumeMm3 - signedVolumeMm3)).toBeLessThan((gridMm / 2) * skinMm2);
    }
  });

  it('has its printed faces on the contact line, plus the allowance, within half the snap grid', () => {
    for (const { part, gridMm, read } of all) {
      const places = read.flat();
      const slackMm = gridMm / 2 + 1e-5;
      for (const { face, ends } of part.lands) {
        const across = ends[0].x === ends[1].x ? 'x' : 'y';
        const along = across === 'x' ? 'y' : 'x';
        const faceMm = ends[0][across] + part.towardsBlank[across] * part.allowanceMm;
        const [low, high] = [ends[0][along], ends[1][along]].sort((a, b) => a - b) as [
          number,
          number,
        ];
        const inBand = places.filter(
          (p) =>
            p.z > part.band.lowMm + part.allowanceMm - slackMm &&
            p.z < part.band.highMm + slackMm &&
            p[along] > low - slackMm &&
            p[along] < high + slackMm &&
            Math.abs(p[across] - faceMm) < 1,
        );
        expect(inBand.length, `places on the ${face} face`).toBeGreaterThanOrEqual(4);
        for (const p of inBand) expect(Math.abs(p[across] - faceMm)).toBeLessThanOrEqual(slackMm);
      }
    }
  });

  it('lets a pin of the nominal screw hole through every hole, within the snap grid', () => {
    for (const { part, gridMm, read } of all) {
      const places = read.flat();
      for (const screw of part.screws) {
        const inside = places.filter((p) => {
          const away = { x: Math.abs(p.x - screw.at.x), y: Math.abs(p.y - screw.at.y) };
          const { hole } = screw;
          if (hole.kind === 'slot')
            away[hole.along] = Math.max(0, away[hole.along] - hole.travelMm);
          return Math.hypot(away.x, away.y) < 6.6 / 2 - gridMm;
        });
        expect(inside).toEqual([]);
      }
    }
  });

  it('gives the same bytes for the same job, twice', () => {
    const again = partsOf(milled).map((part) => stlOf(solidOf(part.profile)));
    expect(again).toHaveLength(2);
    again.forEach((bytes, i) => {
      expect(Buffer.compare(bytes, all[i + 1]!.bytes)).toBe(0);
    });
  });

  it('refuses a solid with a hole wound the wrong way', () => {
    const [part] = partsOf(handSet);
    const faulty: Profile = {
      levels: part!.profile.levels.map((level) => ({
        ...level,
        holes: level.holes.map((hole, i) => (i === 0 ? hole.toReversed() : hole)),
      })),
    };
    expect(() => stlOf(solidOf(faulty))).toThrow(/a hole wound the wrong way/);
  });

  it('refuses a solid with a facet missing', () => {
    const solid = solidOf(all[0]!.part.profile);
    expect(() => stlOf({ ...solid, polygons: solid.polygons.slice(1) })).toThrow(
      'a solid with 3 open edges must not be written',
    );
  });

  it('refuses a solid that is inside out', () => {
    const inside: Profile = { levels: all[0]!.part.profile.levels.toReversed() };
    expect(() => stlOf(solidOf(inside))).toThrow(/must not be written/);
  });

  const missing = !existsSync('/usr/bin/admesh') && process.env['CI'] === undefined;
  it.skipIf(missing)('needs no repair, says admesh (Debian package; skipped where missing)', () => {
    const folder = mkdtempSync(join(tmpdir(), 'flipwright-'));
    try {
      for (const { bytes } of all) {
        const file = join(folder, 'stop.stl');
        writeFileSync(file, bytes);
        const said = execFileSync('/usr/bin/admesh', [file], { encoding: 'utf8' });
        const after = (label: string): string[] =>
          said
            .split('\n')
            .filter((line) => line.includes(label))
            .flatMap((line) => line.slice(line.indexOf(':')).match(/\d+/g) ?? []);
        expect(after('Total disconnected facets')).toEqual(['0', '0']);
        expect(said).toMatch(/Number of parts\s*:\s*1\s/);
        for (const label of ['Degenerate facets', 'Edges fixed', 'Facets removed'])
          expect(said).toMatch(new RegExp(`${label}\\s*:\\s*0\\s`));
        for (const label of ['Facets added', 'Facets reversed', 'Backwards edges', 'Normals fixed'])
          expect(said).toMatch(new RegExp(`${label}\\s*:\\s*0\\s`));
      }
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
