import { frontUpCorner } from '../../../setup/place.ts';
import type { Html } from '../../html.ts';
import { markup } from '../../html.ts';
import { xyWords } from '../../place-words.ts';
import type { Step } from '../../step.ts';
import { step } from '../../step.ts';
import { lengthText, unitText } from '../../words.ts';
import { writtenSpread } from '../../written-spread.ts';
import type { DowelSet } from './dowel-set.ts';
import { dowelTable } from './dowel-table.ts';
import { dowelsWords, fitWords } from './dowel-words.ts';

/** Dowels and a drill to have at hand. */
export function haveDowels({ job, holes, dowels, sizes }: DowelSet): Step {
  const units = job.shop.units;
  const unit = unitText(units);
  const size = (mm: number): string => lengthText(mm, units);
  const count = dowels.length === 1 ? 'a dowel' : `${dowels.length} dowels`;
  return step(
    markup`Have ${count} of steel or hard wood at hand, ${size(holes.diameterMm)} thick and ${size(sizes.longMm)} long, straight, one end rounded or pointed over about ${size(units === 'inch' ? 1.5875 : 2)}; and a drill of ${size(holes.diameterMm)} that hangs ${size(sizes.reachMm)} or more out of its nut or chuck, or a flat cutter of that size or less that reaches as far. Drill a hole in scrap with it and try a dowel: it must go in and out by hand and must not shake; ${fitWords(holes, units)}. Take another drill or other dowels until they fit.`,
    { label: 'dowel', unit },
    { label: 'hole in scrap', unit },
  );
}

/** How deep, how, and what not to do: the same for every hole that goes into the bed. */
export function drillWords({ job, holes }: DowelSet, into: Html): Html {
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  return markup`with the ${size(holes.diameterMm)} drill, ${into}. Peck: no more than half a diameter at once, then right out, so that the chips come out and nothing burns. Turn a drill no faster than its maker allows; if the spindle cannot go so slow, bore with a flat cutter.`;
}

/** Dowels that are drilled for before any blank is there: the bed, the dowels, then the blank. */
export function drillApart(
  set: DowelSet,
  zero: 'yet to be set' | 'that of milling the fence',
): Step[] {
  const { job, holes, sizes } = set;
  const units = job.shop.units;
  const unit = unitText(units);
  const corner = frontUpCorner(job);
  const isZero = [job.zero.frontUp, job.zero.backUp].some(({ xy }) => xy.kind === 'dowels');
  return [
    step(
      markup`${zero === 'yet to be set' ? markup`No blank yet. Set X and Y zero once, by eye, where the ${corner} corner of the blank will be, at ${xyWords(job, job.onBed.value)} from the near-left corner of the bed.` : markup`No blank yet. X and Y zero stay as they are: the bed is drilled from the zero from which the fence was milled.`} Set Z zero for the drill on the <b>bed</b>.${isZero ? ' The program counts from this zero later: write it down.' : ''}`,
      ...(isZero ? ['X', 'Y'].map((label) => ({ label, unit })) : []),
    ),
    step(
      markup`<b>Drill the bed</b> ${drillWords(set, markup`at the places of the table, ${lengthText(sizes.inBedMm, units)} deep`)} ${dowelTable(set)}`,
    ),
    ...(isZero
      ? [
          step(
            markup`<b>From now on do not touch X and Y zero or the power switch</b>, but where this sheet says so: the dowels and zero now belong together.`,
          ),
        ]
      : []),
    tapIn(set),
    step(
      markup`<b>Drill the blank</b> apart from the bed: ${holes.at.length === 1 ? 'one hole' : `${holes.at.length} holes`} of ${lengthText(holes.diameterMm, units)}, right through and square to the face, at the places of the table's first column, each within ${writtenSpread(holes.drillError.text, units)} along X and along Y. Looking at the front, the first figure counts from the left edge, the second from the lower edge. Put a waste board under it. Write its number beside each hole, on both faces, and take the burr off both its ends by hand. A dowel must stand up to ${lengthText(sizes.standsMm, units)} in it without shaking.`,
    ),
  ];
}

/** Dowels into the bed, and how high they then stand. */
export function tapIn(set: DowelSet): Step {
  const { job, dowels, sizes } = set;
  const unit = unitText(job.shop.units);
  const stands = lengthText(sizes.standsMm, job.shop.units);
  return step(
    markup`Blow the ${dowels.length === 1 ? 'hole' : 'holes'} in the bed clean. Tap ${dowelsWords(set)} in with a soft hammer, pointed end up, until ${dowels.length === 1 ? 'it stands' : 'each stands'} <b>${stands}</b> above the bed and no higher; hold a square against ${dowels.length === 1 ? 'it' : 'each'}. One that is loose in the bed gets a turn of thin tape or a drop of glue. <b>From here on raise the cutter well above ${stands} before the machine moves:</b> a cutter that meets a dowel breaks.`,
    ...dowels.map(({ number }) => ({ label: `dowel ${number} stands`, unit })),
  );
}
