import type { Holding, ScrewKind, Tabs } from '../job/holding.ts';
import type { AboveTip, Feature, Job } from '../job/job.ts';
import { unreachable } from '../num/invariant.ts';
import type { Point } from '../plane/point.ts';
import { placingsOf } from '../setup/place.ts';
import type { HoldInput } from './hold-input.ts';

/** Something that a person can change so that a plan becomes good; offered only when it was planned anew and is. */
export type Change =
  | { readonly kind: 'moved-on-bed'; readonly to: Point<'bed'> }
  | { readonly kind: 'no-shoe' }
  | { readonly kind: 'shoe-higher'; readonly byMm: number }
  /** The cutter is put less deep into the collet: all that hangs above its tip is higher. */
  | { readonly kind: 'cutter-further-out'; readonly byMm: number }
  | { readonly kind: 'straps-lower'; readonly byMm: number }
  | { readonly kind: 'slots-longer'; readonly byMm: number }
  | { readonly kind: 'filler' }
  | { readonly kind: 'tighter'; readonly share: number }
  | { readonly kind: 'shallower-passes'; readonly share: number }
  | {
      readonly kind: 'screws';
      readonly at: readonly Point<'blank'>[];
      readonly screw: ScrewKind;
      /** The shop has none of its own: this kind is a proposal. */
      readonly isNew: boolean;
    }
  | { readonly kind: 'tabs'; readonly feature: string; readonly tabs: Tabs }
  | { readonly kind: 'skin'; readonly feature: string; readonly thickMm: number }
  | { readonly kind: 'cut-last'; readonly feature: string }
  | { readonly kind: 'both'; readonly changes: readonly [Change, Change] };

/** What a plan would be made from when a thing is changed. */
export function changed(input: HoldInput, change: Change): HoldInput {
  const { job, holding } = input;
  switch (change.kind) {
    case 'moved-on-bed':
      return withJob(input, {
        ...job,
        onBed: { ...job.onBed, value: change.to },
      });
    case 'no-shoe':
      return withAbove(input, (above) => ({ ...above, dustShoe: null }));
    case 'shoe-higher':
      return withAbove(input, (above) => ({
        ...above,
        dustShoe: raised(above.dustShoe, change.byMm),
      }));
    case 'cutter-further-out':
      return withAbove(input, ({ colletNut, spindle, dustShoe }) => ({
        colletNut: raised(colletNut, change.byMm),
        spindle: raised(spindle, change.byMm),
        dustShoe: raised(dustShoe, change.byMm),
      }));
    case 'straps-lower':
      return withStraps(input, (strap) => ({ ...strap, heightMm: strap.heightMm - change.byMm }));
    case 'slots-longer':
      return withStraps(input, (strap) => ({
        ...strap,
        slotMm: [strap.slotMm[0], strap.slotMm[1] + change.byMm],
        lengthMm: strap.lengthMm + change.byMm,
      }));
    case 'filler':
      return withHolding(input, { ...holding, hasFiller: true });
    case 'tighter':
      return withStraps(input, (strap) => ({ ...strap, torqueNm: strap.torqueNm * change.share }));
    case 'shallower-passes':
      return withHolding(input, {
        ...holding,
        cutting: new Map(
          job.shop.cutters.map(({ name, diameterMm }) => {
            const cutting = holding.cutting.get(name) ?? {
              flutes: null,
              helix: null,
              stepMm: null,
            };
            const stepMm = (cutting.stepMm ?? diameterMm) * change.share;
            return [name, { ...cutting, stepMm }];
          }),
        ),
      });
    case 'screws':
      return withHolding(input, {
        ...holding,
        screw: change.screw,
        screws: [...holding.screws, ...change.at],
      });
    case 'tabs':
      return withHolding(input, {
        ...holding,
        tabs: new Map([...holding.tabs, [change.feature, change.tabs]]),
      });
    case 'skin':
      return withFeatures(
        input,
        job.features.map((one) =>
          one.name === change.feature
            ? { ...one, through: false, depthMm: job.blank.thickMm - change.thickMm }
            : one,
        ),
      );
    case 'cut-last': {
      const last = job.features.filter(({ name }) => name === change.feature);
      const others = job.features.filter(({ name }) => name !== change.feature);
      return withFeatures(input, [...others, ...last]);
    }
    case 'both':
      return change.changes.reduce(changed, input);
    default:
      return unreachable(change);
  }
}

const withJob = (input: HoldInput, job: Job): HoldInput => ({
  ...input,
  job,
  placings: placingsOf(job),
});

const withHolding = (input: HoldInput, holding: Holding): HoldInput => ({ ...input, holding });

const withFeatures = (input: HoldInput, features: readonly Feature[]): HoldInput =>
  withJob(input, { ...input.job, features });

const withStraps = (
  input: HoldInput,
  change: (strap: Holding['straps'][number]) => Holding['straps'][number],
): HoldInput => withHolding(input, { ...input.holding, straps: input.holding.straps.map(change) });

function withAbove(input: HoldInput, change: (above: AboveTip) => AboveTip): HoldInput {
  const { job } = input;
  const { machine } = job.shop;
  const aboveTip = change(machine.aboveTip);
  return withJob(input, { ...job, shop: { ...job.shop, machine: { ...machine, aboveTip } } });
}

const raised = <T extends { readonly fromMm: number }>(thing: T | null, byMm: number): T | null =>
  thing === null ? null : { ...thing, fromMm: thing.fromMm + byMm };
