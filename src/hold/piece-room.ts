import type { Tabs } from '../job/holding.ts';
import { changed, type Change } from './change.ts';
import type { HoldInput } from './hold-input.ts';
import { isBlankGood, placingPlan, type PlacingPlan } from './placing-plan.ts';
import { pieceHold, type PieceHold } from './piece-hold.ts';
import { screwRoom, screwToUse } from './screw-room.ts';

/**
 * What would hold a piece that nothing holds, or not enough: tabs, a skin, screws, another order. Each is
 * planned anew: the piece is then held, or does not come free, and the blank is held no worse.
 */
export function pieceRoom(
  input: HoldInput,
  plan: PlacingPlan,
  which: 'frontUp' | 'backUp',
  { piece }: PieceHold,
): readonly Change[] {
  const holds = (change: Change): boolean => {
    const next = placingPlan(changed(input, change), which, []);
    if (isBlankGood(plan) && !isBlankGood(next)) return false;
    const same = next.pieces.find((one) => one.piece.name === piece.name);
    return same === undefined || same.isHeld;
  };
  const offers = [
    tabsFor(input, plan, piece),
    skinsFor(piece),
    screwsFor(input, piece),
    piece.by.face === plan.placing.faceUp && piece.later.some(({ face }) => face === piece.by.face)
      ? [{ kind: 'cut-last' as const, feature: piece.by.name }]
      : [],
  ];
  return offers.flatMap((ladder) => {
    const step = ladder.find(holds);
    return step === undefined ? [] : [step];
  });
}

type Piece = PieceHold['piece'];

/** The least tabs that hold the piece by themselves, of a size that is filed off without trouble. */
function tabsFor(input: HoldInput, plan: PlacingPlan, piece: Piece): readonly Change[] {
  const { cut, name } = piece.by;
  if (cut !== 'profile-inside' && cut !== 'profile-outside') return [];
  const { job, holding } = input;
  const setting = {
    job,
    holding,
    placing: plan.placing,
    screws: plan.screws,
    program: plan.program?.program ?? null,
  };
  const sizes: Tabs[] = [3, 4, 6, 8].flatMap((count) =>
    [6, 8, 10].flatMap((widthMm) =>
      [2, 3, 4, 6]
        .filter((thickMm) => thickMm <= job.blank.thickMm / 2)
        .map((thickMm) => ({ count, widthMm, thickMm })),
    ),
  );
  const uncut = ({ count, widthMm, thickMm }: Tabs): number => count * widthMm * thickMm;
  const enough = sizes
    .toSorted((a, b) => uncut(a) - uncut(b) || a.count - b.count)
    .find(
      (tabs) =>
        pieceHold(setting, { ...piece, link: { kind: 'tabs', tabs } }, plan.layout?.straps ?? [])
          .isHeld,
    );
  return enough === undefined ? [] : [{ kind: 'tabs', feature: name, tabs: enough }];
}

const skinsFor = ({ by, link }: Piece): readonly Change[] =>
  by.through && link.kind === 'none'
    ? [0.5, 0.8, 1.2].map((thickMm) => ({ kind: 'skin', feature: by.name, thickMm }))
    : [];

function screwsFor({ job, holding, placings }: HoldInput, piece: Piece): readonly Change[] {
  const { screw, isNew } = screwToUse(job, holding);
  const both = [placings.frontUp, placings.backUp];
  const { outlines } = piece.region;
  const at = screwRoom(job, { ...holding, screw }, both, outlines, 2);
  return at.length === 0 ? [] : [{ kind: 'screws', at, screw, isNew }];
}
