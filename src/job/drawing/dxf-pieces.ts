import { cosineOf, sineOf } from '../../num/elementary.ts';
import type { Result } from '../../num/result.ts';
import { faulty, ok } from '../../num/result.ts';
import type { PathVertex } from '../../plane/path.ts';
import { suggestion } from '../schema/closest.ts';
import type { TextFault } from '../text/text-fault.ts';
import { textFault } from '../text/text-fault.ts';
import type { Entity } from './dxf-groups.ts';
import { numberOf, readDxf, textIn } from './dxf-groups.ts';
import type { Chain, Pieces } from './pieces.ts';
import { bulgeOf, circleVertices } from './pieces.ts';
import type { DrawingUnits } from './read.ts';

/** What stands on a layer of a DXF drawing, mm. */
export function dxfPieces(
  text: string,
  layer: string,
  units: DrawingUnits | null,
): Result<Pieces, TextFault> {
  const file = readDxf(text);
  if (!file.ok) return file;
  const mmInUnit = mmInUnitOf(file.value.unitsCode, units);
  if (!mmInUnit.ok) return mmInUnit;
  const drawn = polylinesTogether(file.value.entities);
  const on = drawn.filter(({ head }) => textIn(head, 8) === layer);
  if (on.length === 0) {
    const layers = [...new Set(drawn.map(({ head }) => textIn(head, 8)))];
    return textFault(
      `no layer with anything on it is called ${layer}`,
      suggestion(
        layer,
        layers.filter((name) => name !== ''),
        'layer',
      ),
    );
  }
  const chains: Chain[] = [];
  const faults: TextFault[] = [];
  for (const { head, corners } of on) {
    const chain =
      head.type === 'POLYLINE'
        ? oldPolyline(head, corners, mmInUnit.value)
        : chainOf(head, mmInUnit.value);
    if (chain === null) continue;
    if (chain.ok) chains.push(chain.value);
    else faults.push(...chain.faults);
  }
  return faults.length > 0 ? faulty(faults) : ok({ chains, called: `layer ${layer}`, note: null });
}

interface Drawn {
  readonly head: Entity;
  /** Of an old polyline, which writes each corner as an entity of its own. */
  readonly corners: readonly Entity[];
}

/** Every entity of the model, old polylines with their corners. */
function polylinesTogether(entities: readonly Entity[]): readonly Drawn[] {
  const drawn: { head: Entity; corners: Entity[] }[] = [];
  for (const entity of entities) {
    if (entity.type === 'VERTEX') drawn.at(-1)?.corners.push(entity);
    // 67: on the paper, not in the model.
    else if (numberOf(entity, 67, 0) !== 1) drawn.push({ head: entity, corners: [] });
  }
  return drawn;
}

/** Source: DXF reference, header variable $INSUNITS: 1 inches, 4 millimetres, 5 centimetres, 6 metres, 13 microns. */
const MM_IN: Readonly<Record<number, number>> = { 1: 25.4, 4: 1, 5: 10, 6: 1000, 13: 0.001 };
const CODE_OF = { mm: 4, inch: 1 } as const;

function mmInUnitOf(code: number | null, units: DrawingUnits | null): Result<number, TextFault> {
  const isSaid = code !== null && code !== 0;
  if (!isSaid)
    return units === null
      ? textFault('it does not say its units ($INSUNITS)', 'write units: mm, or units: inch')
      : ok(MM_IN[CODE_OF[units]]!);
  const mm = MM_IN[code];
  if (mm === undefined)
    return textFault(`its units ($INSUNITS ${code}) are not read here`, 'save it in mm or inches');
  if (units !== null && CODE_OF[units] !== code)
    return textFault(
      `the job says units: ${units}, and the drawing says otherwise ($INSUNITS ${code})`,
      'take out units',
    );
  return ok(mm);
}

/** What says nothing about an outline. */
const BESIDE = new Set(['TEXT', 'MTEXT', 'DIMENSION', 'POINT', 'SEQEND', 'ATTRIB', 'LEADER']);

function chainOf(entity: Entity, mm: number): Result<Chain, TextFault> | null {
  if (BESIDE.has(entity.type)) return null;
  const what = nameOf(entity);
  const place = (xCode: number, yCode: number) => ({
    x: numberOf(entity, xCode) * mm,
    y: numberOf(entity, yCode) * mm,
  });
  const sound = (vertices: readonly PathVertex[], isClosed: boolean) =>
    soundChain(entity, { what, vertices, isClosed });
  switch (entity.type) {
    case 'LINE':
      return sound([straight(place(10, 20)), straight(place(11, 21))], false);
    case 'CIRCLE':
      return sound(circleVertices(place(10, 20), numberOf(entity, 40) * mm), true);
    case 'ARC': {
      const radius = numberOf(entity, 40) * mm;
      const [from, to] = [numberOf(entity, 50), numberOf(entity, 51)].map(
        (deg) => (deg * Math.PI) / 180,
      ) as [number, number];
      const full = 2 * Math.PI;
      // Always counter-clockwise, so an end before its start is a turn further on.
      const sweep = (((to - from) % full) + full) % full || full;
      const centre = place(10, 20);
      const at = (rad: number) => ({
        x: centre.x + radius * cosineOf(rad),
        y: centre.y + radius * sineOf(rad),
      });
      if (sweep === full) return sound(circleVertices(centre, radius), true);
      // In two halves, because the bulge of nearly a full turn has no digits left.
      const half = bulgeOf(sweep / 2);
      return sound(
        [
          { at: at(from), bulge: half },
          { at: at(from + sweep / 2), bulge: half },
          straight(at(to)),
        ],
        false,
      );
    }
    case 'LWPOLYLINE':
      return sound(lightCorners(entity, mm), (numberOf(entity, 70, 0) & 1) === 1);
    default:
      return textFault(`${what} is not read here`, READ_ARE);
  }
}

const READ_ARE =
  'draw it with lines, arcs, circles or polylines (explode blocks, turn splines into arcs)';
const nameOf = ({ type, line }: Entity): string => `the ${type.slice(0, 20)} in line ${line}`;
const straight = (at: PathVertex['at']): PathVertex => ({ at, bulge: 0 });

/** Corners of an LWPOLYLINE: each begins with its x; what follows up to the next x belongs to it. */
function lightCorners({ groups }: Entity, mm: number): readonly PathVertex[] {
  const corners: { x: number; y: number; bulge: number }[] = [];
  for (const { code, value } of groups) {
    const figure = value === '' ? NaN : Number(value);
    if (code === 10) corners.push({ x: figure * mm, y: NaN, bulge: 0 });
    const corner = corners.at(-1);
    if (corner !== undefined && code === 20) corner.y = figure * mm;
    if (corner !== undefined && code === 42) corner.bulge = figure;
  }
  return corners.map(({ x, y, bulge }) => ({ at: { x, y }, bulge }));
}

function oldPolyline(
  head: Entity,
  corners: readonly Entity[],
  mm: number,
): Result<Chain, TextFault> {
  const flags = numberOf(head, 70, 0);
  // 2 and 4: fitted curves; 16 and 64: meshes.
  if ((flags & (2 | 4 | 16 | 64)) !== 0)
    return textFault(
      `${nameOf(head)} is a fitted curve or a mesh, which is not read here`,
      READ_ARE,
    );
  const vertices = corners.map((corner) => ({
    at: { x: numberOf(corner, 10) * mm, y: numberOf(corner, 20) * mm },
    bulge: numberOf(corner, 42, 0),
  }));
  return soundChain(head, { what: nameOf(head), vertices, isClosed: (flags & 1) === 1 });
}

function soundChain(entity: Entity, chain: Chain): Result<Chain, TextFault> {
  const { what, vertices } = chain;
  if (numberOf(entity, 230, 1) < 0)
    return textFault(
      `${what} is drawn mirrored, on the back of its plane`,
      'draw it on the XY plane, seen from above',
    );
  const isFinite = vertices.every(({ at, bulge }) => Number.isFinite(at.x + at.y + bulge));
  if (!isFinite)
    return textFault(`${what} has a coordinate that is not a number`, 'save the drawing again');
  if (vertices.length < 2) return textFault(`${what} has fewer than two corners`, 'take it out');
  if (entity.type === 'CIRCLE' || entity.type === 'ARC')
    if (!(numberOf(entity, 40) > 0)) return textFault(`${what} has no radius`, 'take it out');
  return ok(chain);
}
