import { stopNumbers } from '../../../jig/numbers.ts';
import type { Cutter, FenceAndDowel, Job } from '../../../job/job.ts';
import { unreachable } from '../../../num/invariant.ts';
import { boundsOf } from '../../../plane/measure.ts';
import { frontUpCorner } from '../../../setup/place.ts';
import type { Placing } from '../../../setup/placing.ts';
import type { Placings } from '../../../sweep/clearances.ts';
import { markup } from '../../html.ts';
import { xyWords } from '../../place-words.ts';
import type { PrintedFence, SheetStop } from '../../sheet-input.ts';
import type { Step } from '../../step.ts';
import { step } from '../../step.ts';
import { lengthText, unitText } from '../../words.ts';
import { FINISH_MM } from '../../../jig/program/land-runs.ts';
import { runsOn } from '../stops/milling-runs.ts';
import { millingTable } from '../stops/milling-table.ts';

/** The bar to have ready. */
export function haveFence(job: Job, fence: FenceAndDowel, bar: SheetStop): Step {
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  const { lowX, lowY, highX, highY } = boundsOf(bar.body.outline);
  const [short, long] = [highX - lowX, highY - lowY].toSorted((a, b) => a - b);
  const touch =
    fence.fenceTouch.kind === 'arm'
      ? 'Its face towards the blank is one straight stretch.'
      : `Only two lands of it touch the blank, ${size(landMm(bar))} wide, at the black wedges of the picture: between and beside them it stands back ${size(stopNumbers.betweenBackMm)}.`;
  const band =
    fence.band.kind === 'plain'
      ? ''
      : ` It touches only between ${size(bar.band.lowMm)} and ${size(bar.band.highMm)} above the bed: below that it stands back too.`;
  const full =
    bar.allowanceMm === 0
      ? ''
      : ` Leave its face ${size(bar.allowanceMm)} too full: it is milled where it stands, so it must be of wood or plastic.`;
  return step(
    markup`Make the fence: a straight bar of hard wood, plastic or aluminium, ${size(long!)} long, ${size(short!)} wide and ${size(bar.body.highMm)} high, with a screw near each end and one between. ${touch}${band}${full} Take the lower edge of its face off a little, for chips.`,
  );
}

/** The same where the fence is printed. */
export const printFence = ({ fileName }: PrintedFence): Step =>
  step(
    markup`Print the fence, <b>${fileName}</b>: base down, without support, solid round the screws. It has its screw holes, its lands and the room for chips.`,
  );

function landMm({ lands }: SheetStop): number {
  const [one, other] = lands[0]!.ends;
  return Math.hypot(other.x - one.x, other.y - one.y);
}

/** Fixing the fence to the bed in the way the job says it is made. */
export function setFence(
  job: Job,
  { made }: FenceAndDowel,
  bar: SheetStop,
  placing: Placing,
): Step[] {
  const unit = unitText(job.shop.units);
  const axis = placing.base.side === 'near' || placing.base.side === 'far' ? 'X' : 'Y';
  const corner = frontUpCorner(job);
  const at = markup`The ${corner} corner of the blank comes to lie at ${xyWords(job, job.onBed.value)} from the near-left corner of the bed${job.onBed.origin.kind === 'assumed' ? ' (assumed, the job does not say)' : ''}, its ${placing.base.edge} edge at the fence.`;
  switch (made.kind) {
    case 'set-by-hand':
      return [
        step(markup`Screw the fence to the bed where the picture shows it. ${at}`),
        step(
          markup`Set the fence along the machine's ${axis}: jog a pointer along its face from end to end and tap the fence until the gap stays the same. Tighten and look again.`,
          { label: 'gap, one end', unit },
          { label: 'other end', unit },
        ),
      ];
    case 'on-bed-pins':
      return [
        step(
          markup`Push the fence onto its pins in the bed, down until nothing rocks, then tighten the screws. ${at}`,
        ),
      ];
    case 'milled-in-place':
      return [
        step(markup`Screw the fence to the bed where the picture shows it. ${at}`),
        ...millFence(job, bar, made.cutter),
      ];
    default:
      return unreachable(made);
  }
}

function millFence(job: Job, bar: SheetStop, cutter: Cutter): Step[] {
  const size = (mm: number): string => lengthText(mm, job.shop.units);
  return [
    step(
      markup`No blank yet. Set X and Y zero once, by eye, at the ${frontUpCorner(job)} corner of the blank in the picture, so that the whole face of the fence has something to come off. Set Z zero on the <b>bed</b>.`,
    ),
    step(
      markup`<b>Mill the face of the fence</b> from this zero with ${cutter.name}, along the runs below: first all but ${size(FINISH_MM)}, then the last ${size(FINISH_MM)} as a climb cut, then that pass once more without feeding in. The table says where the <b>centre</b> of the cutter runs, half its ${size(cutter.diameterMm)} off the face; from → to is the way that climbs with a spindle that turns clockwise seen from above. <b>You cut next to screws:</b> run it once with the cutter raised. ${millingTable(job, runsOn(job, [bar], cutter, new Set()))}`,
    ),
    step(
      markup`<b>From now on do not touch the screws of the fence.</b> X and Y zero and the power switch: only where this sheet says so.`,
    ),
  ];
}

/** The fence holds the blank across, so a round dowel would fight it. */
export function flattenDowel(job: Job, { frontUp }: Placings): Step {
  const isAlongX = frontUp.base.side === 'near' || frontUp.base.side === 'far';
  const size = lengthText(job.shop.units === 'inch' ? 0.508 : 0.5, job.shop.units);
  return step(
    markup`File two flats on the end of the dowel that goes into the blank, about ${size} deep, side by side: they are to face ${isAlongX ? 'near and far' : 'left and right'}, so that the dowel holds the blank along the fence only, and the fence alone holds it across.`,
  );
}
