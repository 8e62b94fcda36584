import type { Job } from '../../job/job.ts';
import { editsOf, type Places } from './dial.ts';
import { dowelDials, dowelPlaces } from './dowel-dials.ts';
import { bandAt, bandDial, edgesOf, touchAt, touchDials } from './touch-dials.ts';

/** The places of a job that can be moved; null where there are none, as in a nest. */
export function placesOf(job: Job): Places | null {
  switch (job.locating) {
    case 'stops':
      return stopsPlaces(job);
    case 'fence-and-dowel':
      return fencePlaces(job);
    case 'dowels':
      return dowelPlaces(job);
    case 'nest':
      return null;
  }
}

function stopsPlaces(job: Extract<Job, { locating: 'stops' }>): Places {
  const { stops, blank, shop } = job;
  const [fenceMm, sideMm] = edgesOf(job, stops);
  const fence = touchDials('fence-touch', stops.fenceTouch, fenceMm, shop.units, 0);
  const n = fence.dials.length;
  const side = touchDials('side-touch', stops.sideTouch, sideMm, shop.units, n);
  const m = n + side.dials.length;
  const band = bandDial(stops.band, blank.thickMm, shop.units, m);
  const dials = [...fence.dials, ...side.dials, band.dial];
  return {
    dials,
    jobAt: (at) => {
      const fenceTouch = touchAt(stops.fenceTouch, at.slice(0, n), fenceMm, 'apart');
      const sideTouch = touchAt(stops.sideTouch, at.slice(n, m), sideMm, 'any');
      if (fenceTouch === null || sideTouch === null) return null;
      return {
        ...job,
        stops: { ...stops, fenceTouch, sideTouch, band: bandAt(stops.band, at[m]!) },
      };
    },
    editsAt: editsOf(dials, [fence.written, side.written, band.written], shop.units),
  };
}

function fencePlaces(job: Extract<Job, { locating: 'fence-and-dowel' }>): Places {
  const { fenceAndDowel, blank, shop } = job;
  const [fenceMm] = edgesOf(job, fenceAndDowel);
  const fence = touchDials('fence-touch', fenceAndDowel.fenceTouch, fenceMm, shop.units, 0);
  const n = fence.dials.length;
  const band = bandDial(fenceAndDowel.band, blank.thickMm, shop.units, n);
  const dowel = dowelDials(job, fenceAndDowel.dowel, n + 1);
  const dials = [...fence.dials, band.dial, ...dowel.dials];
  return {
    dials,
    jobAt: (at) => {
      const fenceTouch = touchAt(fenceAndDowel.fenceTouch, at.slice(0, n), fenceMm, 'apart');
      const places = dowel.placesAt(at.slice(n + 1));
      if (fenceTouch === null || places === null) return null;
      return {
        ...job,
        fenceAndDowel: {
          ...fenceAndDowel,
          fenceTouch,
          band: bandAt(fenceAndDowel.band, at[n]!),
          dowel: { ...fenceAndDowel.dowel, at: places },
        },
      };
    },
    editsAt: editsOf(dials, [fence.written, band.written, dowel.written], shop.units),
  };
}
