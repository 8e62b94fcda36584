import type { Cutter } from '../job/shop.ts';

/** Where a skim goes, bed frame, mm, and how deep below the highest place. */
export interface SkimArea {
  readonly xMm: number;
  readonly yMm: number;
  readonly depthMm: number;
}

export type SkimProgram =
  | {
      readonly kind: 'program';
      readonly text: string;
      readonly passCount: number;
      readonly cutter: string;
    }
  /** No flat cutter whose speed and feed the shop file says. */
  | { readonly kind: 'no cutter' };

/** Part of its diameter that a row is beside the last: each row laps over the next (common practice). */
const ROW_SHARE = 0.6;
/** The outermost rows stand in from the board's edge by this part of the radius, so that corners are cut too. */
const EDGE_SHARE = 0.6;
/** Deepest that one pass goes, mm: a light cut that a wide cutter takes in board (estimate). */
const PASS_MM = 0.5;
const CLEAR_MM = 5;

/**
 * A program that cuts a board level: rows along X, from the near edge to the far one, pass by pass.
 * RS-274, mm, absolute, only G0 and G1. Its zero: the near-left corner of the board, Z on its highest
 * place.
 */
export function skimProgram(area: SkimArea, cutters: readonly Cutter[]): SkimProgram {
  const fit = cutters
    .filter(
      ({ kind, speedPerMin, feedMmPerMin }) =>
        kind === 'flat' && speedPerMin !== null && feedMmPerMin !== null,
    )
    .sort((a, b) => b.diameterMm - a.diameterMm)[0];
  if (fit === undefined) return { kind: 'no cutter' };
  const radius = fit.diameterMm / 2;
  const inset = EDGE_SHARE * radius;
  const [left, right] = [inset, Math.max(inset, area.xMm - inset)];
  const [near, far] = [inset, Math.max(inset, area.yMm - inset)];
  const rowCount = Math.max(1, Math.ceil((far - near) / (ROW_SHARE * fit.diameterMm)) + 1);
  const rows = Array.from({ length: rowCount }, (_, k) =>
    rowCount === 1 ? near : near + ((far - near) * k) / (rowCount - 1),
  );
  const passCount = Math.max(1, Math.ceil(area.depthMm / PASS_MM - 1e-9));
  const lines = [
    '%',
    `(skim the spoilboard with ${plain(fit.name)}: ${passCount} ${passCount === 1 ? 'pass' : 'passes'}, ${area.depthMm.toFixed(2)} mm in all)`,
    '(X0 Y0: near-left corner of the board; Z0: its highest place)',
    '(take out screws, clamps and stops; sink what stays below the cut)',
    'G21 G90 G17 G94',
    `G0 Z${word(CLEAR_MM)}`,
    `M3 S${word(fit.speedPerMin!)}`,
    'G4 P3',
  ];
  for (let pass = 1; pass <= passCount; pass++) {
    const z = -(area.depthMm * pass) / passCount;
    lines.push(`(pass ${pass} of ${passCount})`, `G0 X${word(left)} Y${word(near)}`);
    lines.push(`G1 Z${word(z)} F${word(fit.feedMmPerMin! / 3)}`);
    rows.forEach((y, k) => {
      const isRight = k % 2 === 0;
      if (k > 0) lines.push(`G1 Y${word(y)}`);
      lines.push(`G1 X${word(isRight ? right : left)} F${word(fit.feedMmPerMin!)}`);
    });
    lines.push(`G0 Z${word(CLEAR_MM)}`);
  }
  lines.push('M5', `G0 X0 Y0`, 'M2', '%');
  return { kind: 'program', text: `${lines.join('\n')}\n`, passCount, cutter: fit.name };
}

/** Three digits are a micrometre; no exponent, no minus before nought. */
const word = (value: number): string => String(Number(value.toFixed(3)) + 0);

/** Inside a comment of a program only plain letters and digits are safe. */
const plain = (name: string): string => name.replace(/[^A-Za-z0-9 .-]/g, '').slice(0, 40);
