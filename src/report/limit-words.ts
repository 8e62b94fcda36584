import type { Html } from '../sheet/html.ts';
import { markup } from '../sheet/html.ts';
import type { NeedPrediction } from '../stackup/prediction.ts';
import type { NeedUnits } from './need-units.ts';
import { toldLimit, type JsonPath } from './told.ts';

/** A need's place among its fellows, in the JSON. */
export const needPath = (index: number): JsonPath => `needs.${index}`;

/** `at most 0.2 mm`, `at least 2.5 mm`, `60.5 mm to 61.5 mm`. */
export function limitWords({ limits }: NeedPrediction, path: JsonPath, as: NeedUnits): Html {
  const { low, high } = limits;
  const least = low === null ? null : toldLimit(`${path}.limits.low`, low, as);
  const most = high === null ? null : toldLimit(`${path}.limits.high`, high, as);
  if (least === null) return most === null ? markup`none` : markup`at most ${most}`;
  return most === null ? markup`at least ${least}` : markup`${least} to ${most}`;
}

/** What the figure is that is judged, in plain words. */
export const JUDGED_BY: Readonly<Record<NeedPrediction['kind'], string>> = {
  concentric: 'how far the two centres are apart',
  misalignment: 'how far the back is off the front at that place',
  lip: 'width of the lip, where it is narrowest',
  web: 'wood left between the two pockets, where it is thinnest',
  wall: 'distance to the edge, where it is least',
  depth: 'depth below the real face',
  meets: 'largest step where the two cuts meet',
  parallel: 'turn of one cut against the other',
  size: 'size of the cut',
  'goes-on': 'play left on each side when it is laid',
};
