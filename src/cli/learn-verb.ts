import { basename, dirname } from 'node:path';
import { faultText, noteText } from '../job/fault.ts';
import type { Job } from '../job/job.ts';
import { correctionName, correctionText } from '../job/readings/correction-file.ts';
import { ownShopOf } from '../job/readings/own-shop.ts';
import { shopPartsOf } from '../job/readings/shop-parts.ts';
import { atNominal, judgedPlace, offsetAt, type Offset } from '../measure/dial-in.ts';
import { radiusFrom } from '../measure/cutter-radius.ts';
import { half95 } from '../measure/estimate.ts';
import { lengthFormulas } from '../measure/length-formula.ts';
import { pieceErrors } from '../measure/piece-errors.ts';
import { pieceReadOf } from '../measure/piece-readings.ts';
import { schemeOf } from '../measure/scheme.ts';
import { webField } from '../measure/webs.ts';
import type { PredictOptions } from '../stackup/predict.ts';
import { storedCorrection } from './correction-warning.ts';
import { EXIT, Refusal } from './exit.ts';
import { find, named, today, valueOf } from './find.ts';
import { addToLog, gaugesAt, loggedParts, type Adding } from './learn-log.ts';
import { foundIn, shopFromParts } from './learn-shop.ts';
import { learnJson, learnText, type Learned, type PieceFindings } from './learn-text.ts';
import { loadJob } from './load.ts';
import { loadReadings } from './read-readings.ts';
import { saveMeasured, type Found } from './save-measured.ts';
import type { Say } from './verbs.ts';
import { writeTogether } from './write-together.ts';

export interface LearnOptions extends PredictOptions {
  readonly json: boolean;
  readonly save: boolean;
  /** Null: nothing is logged. */
  readonly adding: Adding | null;
}

/** What a test piece and finished parts teach: offsets to dial in, and whether the prediction holds. */
export function learnVerb(
  path: string,
  readings: string | null,
  options: LearnOptions,
  say: Say,
): number {
  const { job } = loadJob(path);
  if (options.adding !== null) addToLog(path, job, options.adding, options.json ? () => {} : say);
  const piece = readings === null ? null : pieceFrom(path, readings, job);
  const stored = storedCorrection(path);
  const { parts, cutShort } = loggedParts(path, job, options);
  const learned: Learned = {
    job,
    piece,
    formulas: lengthFormulas(job),
    stored: stored === null ? null : { ...stored, file: correctionName(path) },
    scheme: schemeOf(job),
    parts,
    shop: parts === null ? null : shopFromParts(path, job, parts.rows, gaugesAt(path)),
  };
  say(options.json ? learnJson(learned) : learnText(learned));
  if (cutShort !== null && !options.json) say(`\n${noteText(cutShort)}`);
  if (options.save) {
    const fromParts = learned.shop === null ? [] : foundIn(learned.shop);
    if (piece === null && fromParts.length === 0)
      throw new Refusal(
        `${path}: --save keeps what a test piece or finished parts tell of the shop; the log tells nothing yet, so name the readings file of a test piece`,
      );
    const saved = [
      ...(fromParts.length === 0 ? [] : [keepShop(path, fromParts)]),
      ...(piece === null ? [] : keep(path, readings!, job, piece)),
    ];
    if (!options.json) for (const name of new Set(saved)) say(`wrote ${name}`);
  }
  return EXIT.good;
}

/** Writes what was found of the shop beside the shop file. */
function keepShop(path: string, found: readonly Found[]): string {
  const { shopFile } = valueOf(path, shopPartsOf(named(path), find));
  const shop = valueOf(shopFile, ownShopOf(named(shopFile), find));
  return saveMeasured(shopFile, shop, found);
}

function pieceFrom(path: string, readings: string, job: Job): PieceFindings {
  const { shopFile } = valueOf(path, shopPartsOf(named(path), find));
  const { raw, context } = loadReadings(readings, shopFile);
  const written = raw['test-piece'];
  if (written === undefined)
    throw new Refusal(
      `${readings}: no test piece; write test-piece: {turns: [{combs: [{along: x, at: [20, 4], t1: 12.05, t2: 11.97}]}]}`,
    );
  const read = pieceReadOf(context, written, job);
  if (context.faults.length > 0) throw new Refusal(context.faults.map(faultText).join('\n'));
  const errors = pieceErrors(read.turns, read.wallMm, job.turn, job.locating);
  const at = judgedPlace(job);
  const formulas = lengthFormulas(job);
  const offsets = [errors.x, errors.y].flatMap((field): Offset[] => {
    if (field === null) return [];
    const offset = offsetAt(job, field, at);
    const formula = formulas.find(({ axis }) => axis === offset.axis);
    const size = read.size?.[offset.axis] ?? null;
    return [formula === undefined || size === null ? offset : atNominal(offset, formula, size)];
  });
  return {
    measured: String(raw.measured ?? today()),
    errors,
    webs: webField(read.webs, read.webMm),
    cutter: read.cutter,
    at,
    offsets,
  };
}

/** Writes the correction beside the job, and what the piece told of the shop beside the shop file. */
function keep(path: string, readings: string, job: Job, piece: PieceFindings): readonly string[] {
  const axisOf = (axis: 'x' | 'y') => {
    const offset = piece.offsets.find((one) => one.axis === axis);
    return offset === undefined
      ? null
      : {
          offsetMm: offset.estimate.value,
          half95Mm: half95(offset.estimate),
          readingMm: offset.readingSd,
          calipered: offset.calipered,
        };
  };
  const name = correctionName(path);
  const text = correctionText({
    measured: piece.measured,
    turns: piece.errors.turnCount,
    at: piece.at,
    x: axisOf('x'),
    y: axisOf('y'),
    scheme: schemeOf(job),
  });
  const found = measuredOf(readings, job, piece);
  writeTogether(dirname(name), [{ name: basename(name), bytes: text }]);
  return found.length === 0 ? [name] : [name, keepShop(path, found)];
}

function measuredOf(readings: string, job: Job, piece: PieceFindings): readonly Found[] {
  const { errors, measured, cutter } = piece;
  const combs = (errors.x?.combCount ?? 0) + (errors.y?.combCount ?? 0);
  const because = `a test piece of ${combs} combs, ${errors.turnCount} turned over, in ${readings}`;
  const found: Found[] = [];
  if (errors.lean !== null) found.push({ of: 'machine.lean', ...errors.lean, measured, because });
  const known = job.shop.cutters.find(({ name }) => name === cutter);
  if (errors.growth !== null && known !== undefined)
    found.push({
      of: `cutters.${known.name}.radius`,
      ...radiusFrom(errors.growth, known.pushOff),
      measured,
      because: `${because}; the mean of its push-off (${known.pushOff.text}) is put back, since each cut takes it off again`,
    });
  return found;
}
