import type { StopsJob } from '../../../job/job.ts';
import type { Placing, Side } from '../../../setup/placing.ts';
import type { Html } from '../../html.ts';
import { joined, markup } from '../../html.ts';
import { inOrder, placingOf } from '../../places.ts';
import type { SheetStop, StopsInput } from '../../sheet-input.ts';
import { lengthText } from '../../words.ts';
import { fenceLine } from '../fence-line.ts';
import type { Key, Located, Way } from '../way.ts';
import { sideStopName } from './side-stop.ts';
import { stopBadges, stopLetter } from './stop-badges.ts';
import { contactDrawing, stopDrawing, stopMarks } from './stop-drawing.ts';
import { stopLaying } from './stop-laying.ts';
import { printStops } from './stop-making.ts';
import { otherSideStop, stopSteps } from './stop-steps.ts';
import { isInUse } from './stop-use.ts';

/** Located by touch: a fence and a side stop, printed and fixed to the bed. */
export function stopsWay(input: StopsInput): Way {
  const { job, placings } = input;
  const [first, second] = inOrder(job, placings);
  const { made } = job.stops;
  return {
    heights: { title: 'Heights over the stops', column: 'Stop', tells: 'each stop' },
    cautions: [],
    prepare: [printStops(input)],
    cutters: made.kind === 'milled-in-place' ? [made.cutter] : [],
    key: stopKey(input),
    turning: {
      before: [],
      burrs: markup`Take the burrs off the edges of the blank with one light stroke. Do not sand or plane the edges that meet a stop. Vacuum bed, stops and pockets.`,
      after: otherSideStop(job, first, second),
    },
    next: [],
    in: (placing) => onStops(input, placing),
  };
}

function onStops(input: StopsInput, placing: Placing): Located {
  const { job, stops } = input;
  return {
    making: placing.order === 'first' ? stopSteps(input, placing) : [],
    laying: stopLaying(job, placing),
    drilling: [],
    passing: 'every stop',
    landmark: { words: 'the top of a stop', short: 'top of the stop' },
    floor: 'bed',
    hidesFloor: false,
    atEdges: 'at half its thickness, beside the stops',
    atMiddle: "at half the blank's thickness",
    lifting: 'take the blank out',
    sideWords: (side) => stopSides(job, placing, side),
    reach: stops.flatMap((stop) => [...stop.body.outline, ...stop.screws.map((screw) => screw.at)]),
    under: (field) => stopDrawing(stops, placing, field, `hatch-${placing.faceUp}`),
    over: (field) =>
      joined(placing.contacts.map((contact) => contactDrawing(contact, placing, field))),
    marks: (field) => stopMarks(stops, placing, field),
    labels: (field, taken) => stopBadges(stops, field, taken),
    sketch: ({ box }) => fenceLine(placing.base.side, box),
  };
}

function stopSides(job: StopsJob, placing: Placing, side: Side): readonly string[] {
  return [
    ...(placing.base.side === side ? ['against the fence'] : []),
    ...(placing.end.side === side ? [`against ${sideStopName(job, placing)}`] : []),
  ];
}

function stopKey(input: StopsInput): Key {
  const { job, stops } = input;
  const letter = (i: number): Html => markup`<b class="letter">${stopLetter(i)}</b>`;
  const pin = stops.some((stop) => stop.pins.length > 0)
    ? markup`; <b>dot in a ring</b>: pin`
    : markup``;
  return {
    title: 'Stops',
    things: stops.map(
      (stop, i) =>
        markup`${letter(i)}${stop.body.name}: ${lengthText(stop.body.highMm, job.shop.units)} high, ${useWords(input, stop)}`,
    ),
    lines: [
      markup`<b>Black wedge</b>: here the blank touches a stop (${bandWords(job)})`,
      markup`<b>Crossed circle</b>: screw${pin}; <b>M</b>: the pencilled corner`,
    ],
    pictures: input.stopPictures.map(
      (picture, i) =>
        markup`<figure><figcaption>${letter(i)}</figcaption>${{ html: picture }}</figure>`,
    ),
  };
}

function useWords({ placings }: StopsInput, stop: SheetStop): string {
  const used = (['front', 'back'] as const).filter((face) =>
    isInUse(stop, placingOf(placings, face)),
  );
  if (used.length === 2) return 'in both placings';
  return used.length === 1 ? `with the ${used[0]!} up` : 'the blank does not touch it';
}

function bandWords({ stops, shop }: StopsJob): string {
  return stops.band.kind === 'plain'
    ? `anywhere up to ${lengthText(stops.band.heightMm, shop.units)} above the bed`
    : `in a narrow band ${lengthText(stops.band.touchHeightMm, shop.units)} above the bed`;
}
