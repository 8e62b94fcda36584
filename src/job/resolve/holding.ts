import { invariant } from '../../num/invariant.ts';
import type { Result } from '../../num/result.ts';
import type {
  Board,
  BoltWish,
  ClampWish,
  Cutting,
  Holding,
  ProgramFile,
  Tabs,
} from '../holding.ts';
import type { Blank, Bed } from '../job.ts';
import type { RawBolts, RawHold, RawProgram, RawTabs } from '../schema/raw-hold.ts';
import type { RawJob } from '../schema/raw-job.ts';
import type { RawCutter, RawShopParts, Written } from '../schema/raw-shop.ts';
import { readForce, readPressure } from '../text/load.ts';
import { said } from '../text/said.ts';
import type { Context } from './context.ts';
import { fault } from './context.ts';
import type { Drawer } from './cutters.ts';
import { cutterNamed } from './cutters.ts';
import type { KnownFeature } from './features.ts';
import { holdDownsOf, tracksOf } from './hold-downs.ts';
import { mm, mmOrNull, pointMm } from './lengths.ts';
import type { Copy } from './repeat.ts';
import { materialOf } from '../wood/species.ts';

interface Around {
  readonly raw: Partial<RawJob>;
  readonly parts: RawShopParts;
  readonly drawer: Drawer;
  readonly blank: Blank | null;
  readonly bed: Bed;
  readonly features: readonly KnownFeature[];
  readonly copies: readonly Copy[];
}

/** What the files say about holding down, with every fault in it. */
export function holdingOf(context: Context, around: Around): Holding {
  const { raw, parts, drawer, blank } = around;
  const hold = raw.hold ?? {};
  const frontUp = programOf(context, raw.program?.['front-up'], 'front', drawer);
  const backUp = programOf(context, raw.program?.['back-up'], 'back', drawer);
  const downs = holdDownsOf(context, parts['hold-downs'] ?? []);
  const screws = (hold.screws ?? []).map(pointMm);
  screws.forEach((at, k) => {
    checkScrew(context, hold, k, at, blank);
  });
  if (screws.length > 0 && downs.screw === null && drawer.isKnown)
    fault(
      context,
      [hold, 'screws'],
      'there are places for screws, and the shop has none',
      'write hold-downs: [{name: spax, kind: screw, diameter: 4, length: 35, head: [8, 3]}] in the shop file',
    );
  return {
    programs: { frontUp, backUp },
    clamps: clampsOf(context, hold, around.bed),
    screws,
    tabs: tabsOf(context, around),
    friction: hold.friction ?? null,
    force: {
      sidewaysN: figure(readForce, hold['cutting-force']),
      liftN: figure(readForce, hold['lifting-force']),
    },
    vacuum:
      hold.vacuum === undefined
        ? null
        : {
            gaugeKPa: figure(readPressure, hold.vacuum.gauge)!,
            areaMm2: areaMm2(hold.vacuum.sealed),
          },
    tape:
      hold.tape === undefined
        ? null
        : {
            shearKPa: figure(readPressure, hold.tape.strength) ?? TAPE_KPA,
            areaMm2: areaMm2(hold.tape.stuck),
          },
    hasFiller: hold.filler === 'yes' || hold.filler === true,
    ...downs,
    boardScrews: (parts.bed?.screws ?? []).map((at) => pointMm(at)),
    board: boardOf(context, parts, around.bed),
    tracks: tracksOf(context, parts.bed?.['t-tracks'] ?? []),
    cutting: new Map((parts.cutters ?? []).map((cutter) => [cutter.name, cuttingOf(cutter)])),
  };
}

function boardOf(context: Context, { bed }: RawShopParts, { spoilboard }: Bed): Board {
  const holes = bed?.spoilboard?.['old-holes'] ?? [];
  holes.forEach((hole, k) => {
    const { x, y } = pointMm(hole);
    if (x >= 0 && y >= 0 && x <= spoilboard.xMm && y <= spoilboard.yMm) return;
    fault(
      context,
      [holes, k],
      `the old hole at ${said(x)}, ${said(y)} is off the spoilboard`,
      `write 0 to ${said(spoilboard.xMm)}, 0 to ${said(spoilboard.yMm)}`,
    );
  });
  const material = bed?.spoilboard?.material ?? null;
  const known = material === null ? null : materialOf(material);
  if (known !== null && known.kind === 'wood' && !known.isKnown)
    fault(
      context,
      [bed!.spoilboard!, 'material'],
      `the material ${material} of the spoilboard is no wood or board whose hold on screws is known`,
      'write mdf, plywood, or a wood such as beech; left out, it is taken as MDF',
    );
  return { material, oldHoles: holes.map(pointMm) };
}

/** Allowable shear of tape that nobody stated, kPa. An estimate; test a sample. */
const TAPE_KPA = 20;

function figure(
  read: (text: string) => Result<number, unknown>,
  written: Written | undefined,
): number | null {
  if (written === undefined) return null;
  const value = read(String(written));
  invariant(value.ok, `the schema let ${written} through`);
  return value.value;
}

const areaMm2 = (size: readonly [Written, Written]): number => mm(size[0]) * mm(size[1]);

const cuttingOf = (raw: RawCutter): Cutting => ({
  flutes: raw.flutes ?? null,
  helix: raw.helix ?? null,
  stepMm: mmOrNull(raw.step),
});

function programOf(
  context: Context,
  raw: RawProgram | undefined,
  face: ProgramFile['face'],
  drawer: Drawer,
): ProgramFile | null {
  if (raw === undefined) return null;
  const bytes = context.drawings.get(raw.file);
  if (bytes === undefined)
    fault(
      context,
      [raw, 'file'],
      `the program ${raw.file} is not there`,
      'write its place from this file, or take program out to check the features instead',
    );
  const cutter = cutterNamed(context, drawer, [raw, 'cutter'], raw.cutter);
  const tools = new Map<number, NonNullable<typeof cutter>>();
  for (const [number, name] of Object.entries(raw.tools ?? {})) {
    const tool = cutterNamed(context, drawer, [raw.tools!, number], name);
    if (!/^\d{1,4}$/.test(number))
      fault(
        context,
        [raw.tools!, number],
        `${number} is not the number of a T word`,
        'write {2: vee 90}',
      );
    else if (tool !== null) tools.set(Number(number), tool);
  }
  return bytes === undefined || cutter === null
    ? null
    : { face, file: raw.file, bytes, cutter, tools };
}

function checkScrew(
  context: Context,
  hold: RawHold,
  index: number,
  at: { readonly x: number; readonly y: number },
  blank: Blank | null,
): void {
  if (blank === null) return;
  if (at.x > 0 && at.y > 0 && at.x < blank.widthMm && at.y < blank.heightMm) return;
  fault(
    context,
    [hold.screws!, index],
    `the screw at ${said(at.x)}, ${said(at.y)} is not in the blank of ${said(blank.widthMm)} by ${said(blank.heightMm)} mm`,
    'write a place within it, seen from the front',
  );
}

function clampsOf(context: Context, { clamps }: RawHold, bed: Bed): ClampWish {
  const none: BoltWish = { pin: [], forbid: [] };
  if (typeof clamps !== 'object') return { kind: clamps ?? 'auto', frontUp: none, backUp: none };
  const wish = (raw: RawBolts | undefined): BoltWish => {
    if (raw === undefined) return none;
    for (const key of ['pin', 'forbid'] as const)
      (raw[key] ?? []).forEach((place, k) => {
        const at = pointMm(place);
        if (at.x >= 0 && at.y >= 0 && at.x <= bed.spoilboard.xMm && at.y <= bed.spoilboard.yMm)
          return;
        fault(
          context,
          [raw[key]!, k],
          `a bolt at ${said(at.x)}, ${said(at.y)} is off the spoilboard`,
          `write 0 to ${said(bed.spoilboard.xMm)}, 0 to ${said(bed.spoilboard.yMm)}`,
        );
      });
    return { pin: (raw.pin ?? []).map(pointMm), forbid: (raw.forbid ?? []).map(pointMm) };
  };
  return { kind: 'auto', frontUp: wish(clamps['front-up']), backUp: wish(clamps['back-up']) };
}

/** More tabs than anybody files off; a larger figure is a slip of the finger. */
const MOST_TABS = 50;

function tabsOf(context: Context, { features, copies, blank }: Around): Holding['tabs'] {
  const tabs = new Map<string, Tabs>();
  for (const { feature, raw } of features) {
    if (raw.tabs === undefined) continue;
    const one = checkedTabs(context, raw.tabs, blank);
    if (feature.cut !== 'profile-outside' && feature.cut !== 'profile-inside')
      fault(
        context,
        [raw, 'tabs'],
        `tabs are for a profile, and ${feature.name} is a ${feature.cut}`,
        'take them out, or write cut: profile-outside',
      );
    for (const { suffix } of copies) tabs.set(feature.name + suffix, one);
  }
  return tabs;
}

function checkedTabs(context: Context, raw: RawTabs, blank: Blank | null): Tabs {
  const thickMm = mm(raw.thick);
  if (raw.count < 1 || raw.count > MOST_TABS)
    fault(
      context,
      [raw, 'count'],
      `count ${raw.count} is not a number of tabs`,
      `write 1 to ${MOST_TABS}`,
    );
  if (blank !== null && thickMm >= blank.thickMm)
    fault(
      context,
      [raw, 'thick'],
      `the tabs are ${said(thickMm)} mm high, and the blank is ${said(blank.thickMm)} mm thick`,
      `write less than ${said(blank.thickMm)}`,
    );
  return { count: raw.count, widthMm: mm(raw.width), thickMm };
}
