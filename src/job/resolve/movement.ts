import { invariant } from '../../num/invariant.ts';
import { DEFAULTS } from '../defaults.ts';
import type { Blank, Spread } from '../job.ts';
import type { RawBetween, RawBlank } from '../schema/raw-job.ts';
import { readHumidity, readTemperature } from '../text/air.ts';
import type { Wait } from '../wood/movement.ts';
import { movementIn } from '../wood/movement.ts';
import { restingMoisture } from '../wood/emc.ts';
import { materialOf } from '../wood/species.ts';
import type { Context } from './context.ts';
import { fault, note } from './context.ts';
import { assumed, spreadAt } from './spread.ts';

/** The strain of the blank between its placings: as it is stated, or from how long it lies and in what air. */
export function movementsOf(
  context: Context,
  raw: RawBlank,
  between: RawBetween | undefined,
  thickMm: number,
): Pick<Blank, 'movementX' | 'movementY' | 'movesTogether'> {
  if (between === undefined)
    return {
      movementX: stated(context, raw, 'x'),
      movementY: stated(context, raw, 'y'),
      movesTogether: false,
    };
  if (raw.movement !== undefined)
    fault(
      context,
      [raw, 'movement'],
      'movement says how far the blank moves, and between-placings says it too',
      'take one of them out',
    );
  const wait = waitOf(between);
  const material = materialOf(raw.material ?? '');
  tellUnknown(context, raw);
  const grain = raw.grain ?? null;
  const movement = movementIn(material, grain, raw.board ?? 'flat-sawn', thickMm, wait);
  const [dry, damp] = wait.humidityShare.map((share) => restingMoisture(share, wait.celsius));
  if (material.kind === 'wood' && grain !== 'sheet' && (dry! < DRIEST || damp! > DAMPEST))
    note(
      context,
      [between, 'humidity'],
      `wood comes to rest at ${dry!.toFixed(1)} to ${damp!.toFixed(1)} % moisture there, and how it moves is known from ${DRIEST} to ${DAMPEST} %`,
    );
  const air = `${between.hours} h in air of ${String(between.humidity)}`;
  const spread = (largest: number): Spread =>
    estimate(largest, `${air}; ${movement.because}; an estimate`);
  return {
    movementX: spread(movement.largestX),
    movementY: spread(movement.largestY),
    movesTogether: true,
  };
}

/** Moisture, %, for which the coefficients of the table hold. */
const [DRIEST, DAMPEST] = [6, 14] as const;

/**
 * Both the air it came from and the air it lies in are anywhere between the driest and the dampest, so the
 * difference is triangular.
 */
function estimate(largest: number, because: string): Spread {
  const percent = Number((100 * largest).toPrecision(3));
  return {
    distribution:
      largest === 0
        ? { kind: 'exactly', value: 0 }
        : { kind: 'triangular', low: -largest, high: largest },
    recurs: 'part',
    origin: { kind: 'assumed', because },
    text: largest === 0 ? '0' : `±${percent} % triangular`,
  };
}

function stated(context: Context, raw: RawBlank, axis: 'x' | 'y'): Spread {
  const written = raw.movement;
  if (written?.[axis] === undefined) return assumed(DEFAULTS.movement);
  return spreadAt(context, [written, axis], written[axis], DEFAULTS.movement);
}

/** What stands for the temperature when none is written. */
const ROOM = '20 C';

function waitOf(raw: RawBetween): Wait {
  const humidity = readHumidity(String(raw.humidity));
  const temperature = readTemperature(String(raw.temperature ?? ROOM));
  invariant(humidity.ok && temperature.ok, 'the schema let the air between the placings through');
  return { hours: raw.hours, humidityShare: humidity.value, celsius: temperature.value };
}

function tellUnknown(context: Context, raw: RawBlank): void {
  const material = materialOf(raw.material ?? '');
  if (material.kind !== 'wood' || material.isKnown || raw.grain === 'sheet') return;
  const what =
    raw.material === undefined
      ? 'no material is given'
      : `${raw.material} is not in the table of woods`;
  note(
    context,
    [raw, 'material'],
    `${what}, so it is taken to move as ${material.species.name}, the most of them; movement: says it yourself`,
  );
}
