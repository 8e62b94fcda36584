import { invariant } from '../../num/invariant.ts';
import type { Holding, ScrewKind, Strap, Track } from '../holding.ts';
import type { RawHoldDown, RawTrack } from '../schema/raw-hold.ts';
import { said } from '../text/said.ts';
import { readTorque } from '../text/load.ts';
import type { Context } from './context.ts';
import { fault, startPlace } from './context.ts';
import { mm } from './lengths.ts';

/** More of one clamp than a shop owns; a larger figure is a slip of the finger. */
const MOST_CLAMPS = 100;

/** Clamps and screws at hand. */
export function holdDownsOf(
  context: Context,
  raws: readonly RawHoldDown[],
): Pick<Holding, 'straps' | 'screw'> {
  const straps: Strap[] = [];
  let screw: ScrewKind | null = null;
  for (const raw of raws) {
    if (raw.kind === 'strap-clamp') {
      const strap = strapOf(context, raw);
      if (strap !== null) straps.push(strap);
    } else if (screw !== null) {
      fault(context, [raw, 'kind'], 'there is a screw already', 'keep the one that is used here');
    } else {
      screw = screwOf(context, raw);
    }
  }
  return { straps, screw };
}

function lacks(context: Context, raw: RawHoldDown, keys: readonly (keyof RawHoldDown)[]): boolean {
  const missing = keys.filter((key) => raw[key] === undefined);
  if (missing.length > 0 && !context.touched.has(raw))
    fault(
      context,
      startPlace(context, raw),
      `the ${raw.kind} ${raw.name} does not say its ${missing.join(', ')}`,
      raw.kind === 'screw'
        ? 'write {name: spax, kind: screw, diameter: 4, length: 35, head: [8, 3]}'
        : 'write {name: strap, kind: strap-clamp, count: 4, slot: [20, 60], pad: [20, 12], height: 12, bolt: M6, torque: 4 Nm}',
    );
  return missing.length > 0;
}

function strapOf(context: Context, raw: RawHoldDown): Strap | null {
  if (lacks(context, raw, ['slot', 'pad', 'height', 'bolt', 'torque'])) return null;
  const torque = readTorque(raw.torque!);
  invariant(torque.ok, 'the schema let a torque through');
  const count = raw.count ?? 1;
  if (count < 1 || count > MOST_CLAMPS)
    fault(
      context,
      [raw, 'count'],
      `count ${count} is not a number of clamps`,
      `write 1 to ${MOST_CLAMPS}`,
    );
  const slotMm = [mm(raw.slot![0]), mm(raw.slot![1])] as const;
  const padMm = [mm(raw.pad![0]), mm(raw.pad![1])] as const;
  const lengthMm = raw.length === undefined ? slotMm[0] + slotMm[1] : mm(raw.length);
  if (slotMm[0] > slotMm[1])
    fault(
      context,
      [raw, 'slot'],
      `the slot runs from ${said(slotMm[0])} to ${said(slotMm[1])} mm`,
      'write the nearer end first',
    );
  else if (slotMm[0] <= padMm[1])
    fault(
      context,
      [raw, 'slot'],
      `the bolt would stand ${said(slotMm[0])} mm from the nose, in the pad of ${said(padMm[1])} mm`,
      `write more than ${said(padMm[1])}`,
    );
  else if (lengthMm <= slotMm[1])
    fault(
      context,
      [raw, 'length'],
      `the strap is ${said(lengthMm)} mm long, and its slot ends at ${said(slotMm[1])} mm`,
      `write more than ${said(slotMm[1])}`,
    );
  return {
    name: raw.name,
    count,
    slotMm,
    lengthMm,
    padMm,
    heightMm: mm(raw.height!),
    thread: raw.bolt!,
    torqueNm: torque.value,
  };
}

function screwOf(context: Context, raw: RawHoldDown): ScrewKind | null {
  if (lacks(context, raw, ['diameter', 'length', 'head'])) return null;
  const [shankMm, lengthMm, headMm] = [mm(raw.diameter!), mm(raw.length!), mm(raw.head![0])];
  if (headMm < shankMm)
    fault(
      context,
      [raw, 'head'],
      `the head is ${said(headMm)} mm wide, and the shank ${said(shankMm)} mm`,
      'write the diameter of the head, then how far it stands above the blank',
    );
  return { name: raw.name, shankMm, lengthMm, headMm, headHighMm: mm(raw.head![1]) };
}

export const tracksOf = (context: Context, raws: readonly RawTrack[]): readonly Track[] =>
  raws.map((raw) => {
    const [fromMm, toMm] = [mm(raw.from), mm(raw.to)];
    if (fromMm >= toMm)
      fault(
        context,
        [raw, 'to'],
        `the track ends at ${said(toMm)} and begins at ${said(fromMm)} mm`,
        'write the lower end as from',
      );
    return { along: raw.along, atMm: mm(raw.at), fromMm, toMm };
  });
