import type { Units } from '../../job/job.ts';
import type { Distribution } from '../../num/distribution.ts';
import type { Source } from '../../sources/source.ts';
import { centreOf, scaledAbout, sizeOf } from './scaled.ts';

/** How figures of a source are written: how many of them make one of ours (mm, tangents, strains), and what stands behind. */
interface Unit {
  readonly perOurs: number;
  readonly behind: string;
}

const PER = /per\s+(\d+(?:\.\d+)?)/;
const MM_PER_INCH = 25.4;

/** As the source itself is written. */
function unitOf({ text, id }: Source, units: Units): Unit {
  if (/deg|°/.test(text)) return { perOurs: 180 / Math.PI, behind: ' deg' };
  if (PER.test(text)) {
    const overMm = overOf(text);
    return units === 'inch'
      ? { perOurs: overMm / MM_PER_INCH, behind: ` in per ${short(overMm / MM_PER_INCH)} in` }
      : { perOurs: overMm, behind: ` mm per ${overMm} mm` };
  }
  if (/^movement/.test(id)) return { perOurs: 100, behind: ' %' };
  const twice = /on the diameter/.test(text) ? 2 : 1;
  const behind = `${units === 'inch' ? ' in' : ' mm'}${twice === 2 ? ' on the diameter' : ''}`;
  return { perOurs: units === 'inch' ? twice / MM_PER_INCH : twice, behind };
}

/** The length over which a source's lean is written, mm; 200 when it says none. */
export function overOf(text: string): number {
  const per = PER.exec(text);
  if (per === null) return 200;
  return /in\b|"/.test(text) ? Number(per[1]) * MM_PER_INCH : Number(per[1]);
}

/** A little less than `by`, so that the figure that is told has few digits. */
export function toldScale(source: Source, by: number): number {
  const { distribution } = source;
  // Lost motion is told both ways together, and an interval by its ends.
  const factor = distribution.kind === 'either' ? 2 : isIn95(source) ? Z_975 : 1;
  const size = factor * sizeOf(distribution);
  const { perOurs } = unitOf(source, 'mm');
  const told = roundedDown(size * by * perOurs);
  return told === 0 ? by : told / (size * perOurs);
}

/** Half-width of a 95 % interval in standard deviations. Source: standard normal 97.5 % point. */
const Z_975 = 1.959963984540054;

/** Written as `±0.2 95%`. */
const isIn95 = ({ text, distribution }: Source): boolean =>
  distribution.kind === 'normal' && /95\s*%/.test(text);

/** Two digits that count, three when the first is a 1, never more than it was. */
function roundedDown(value: number): number {
  if (value <= 0) return 0;
  const power = Math.floor(Math.log10(value));
  const digits = value / 10 ** power < 2 ? 2 : 1;
  const step = 10 ** (power - digits);
  return Number((Math.floor(value / step + 1e-9) * step).toPrecision(digits + 1));
}

const short = (value: number): string => String(Number(value.toPrecision(3)));

/** A source's spread, `by` times as large, with its unit at every figure. */
export function spreadTold(source: Source, by: number, units: Units): string {
  const { perOurs, behind } = unitOf(source, units);
  const figure = (value: number): string => short(value * perOurs);
  const spread = scaledAbout(source.distribution, by);
  if (spread.kind === 'normal' && isIn95(source))
    return `±${figure(Z_975 * spread.sd)}${behind} (95 in 100)`;
  return told(spread, figure, behind, source.distribution);
}

function told(
  spread: Distribution,
  figure: (value: number) => string,
  behind: string,
  whole: Distribution,
): string {
  switch (spread.kind) {
    case 'exactly':
      return `${figure(spread.value)}${behind}`;
    case 'rectangular':
    case 'triangular':
    case 'arcsine': {
      const kind = spread.kind === 'rectangular' ? '' : ` (${spread.kind})`;
      const { low, high } = spread;
      if (Math.abs(low + high) < 1e-9 * (high - low)) return `±${figure(high)}${behind}${kind}`;
      // A size that is written beside its middle: 280.4 -0.8..-0.2.
      return centreOf(whole) < 0
        ? `±${figure((high - low) / 2)}${behind}${kind}${aboutText(whole, figure, behind)}`
        : `${figure(low)} to ${figure(high)}${behind}${kind}`;
    }
    case 'either':
      return `${figure(spread.high - spread.low)}${behind} both ways`;
    case 'normal':
      return `${figure(spread.sd)}${behind} sd${aboutText(whole, figure, behind)}`;
    case 'half-normal':
      return `half-normal ${figure(spread.sigma)}${behind}`;
    case 'scaled-t':
      return `${figure(spread.scale)}${behind} (t, ${spread.dof} degrees of freedom)`;
  }
}

function aboutText(whole: Distribution, figure: (value: number) => string, behind: string): string {
  const centre = centreOf(whole);
  return centre === 0 ? '' : ` about ${figure(centre)}${behind}`;
}
