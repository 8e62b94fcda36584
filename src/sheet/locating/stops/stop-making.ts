import { markup } from '../../html.ts';
import type { StopsInput } from '../../sheet-input.ts';
import type { Step } from '../../step.ts';
import { step } from '../../step.ts';
import { lengthText } from '../../words.ts';

/** The first thing to prepare: the stops themselves. */
export function printStops({ job, fileNames, stops }: StopsInput): Step {
  const units = job.shop.units;
  const files = fileNames.length === 0 ? 'no file' : fileNames.join(', ');
  const screws = stops.flatMap((stop) => stop.screws);
  const threads = [...new Set(screws.map((screw) => screw.thread))];
  const pins = stops.flatMap((stop) => stop.pins);
  const pinned =
    pins.length === 0
      ? ''
      : ` and ${pins.length} steel pins ${lengthText(pins[0]!.diameterMm, units)} thick`;
  const fixing =
    screws.length === 0
      ? ''
      : ` Have ${screws.length} ${threads.join('/')} screws${pinned} at hand.`;
  return step(
    markup`Print or cut the ${stops.length === 1 ? 'stop' : 'stops'} from the ${fileNames.length === 1 ? 'file' : 'files'} beside this sheet: ${files}.${fixing} Take burrs and strings off the contact faces.`,
  );
}
