import fc from 'fast-check';

/** Numbers as a person or a program writes them. */
const n = (value: number): string => String(Number(value.toFixed(4)));

const at = fc.double({ min: -80, max: 80, noNaN: true });
const step = fc.oneof(
  fc.record({ kind: fc.constant('line' as const), rapid: fc.boolean(), x: at, y: at, z: at }),
  fc.record({
    kind: fc.constant('arc' as const),
    clockwise: fc.boolean(),
    plane: fc.constantFrom('xy' as const, 'zx' as const, 'yz' as const),
    radius: fc.double({ min: 0.5, max: 40, noNaN: true }),
    start: fc.double({ min: 0, max: 6.2, noNaN: true }),
    sweep: fc.double({ min: 0.2, max: 6, noNaN: true }),
    rise: fc.double({ min: -3, max: 3, noNaN: true }),
    form: fc.constantFrom('offset' as const, 'place' as const, 'radius' as const, 'full' as const),
  }),
  fc.record({
    kind: fc.constant('drill' as const),
    x: at,
    y: at,
    z: fc.double({ min: -9, max: -1, noNaN: true }),
    clear: fc.double({ min: 0.5, max: 3, noNaN: true }),
    pecks: fc.boolean(),
    returnsToR: fc.boolean(),
  }),
  fc.record({ kind: fc.constant('units' as const), inch: fc.boolean() }),
  fc.record({ kind: fc.constant('relative' as const), x: at, y: at }),
);

export type Step = typeof step extends fc.Arbitrary<infer T> ? T : never;

/** A valid program of the steps: lines, arcs in all planes and forms, drilling, both units, both distances. */
export const aProgram: fc.Arbitrary<string> = fc
  .array(step, { minLength: 1, maxLength: 25 })
  .map(written);

const PLANES = {
  xy: { code: 'G17', first: 'X', second: 'Y', third: 'Z', centre: ['I', 'J'] },
  zx: { code: 'G18', first: 'Z', second: 'X', third: 'Y', centre: ['K', 'I'] },
  yz: { code: 'G19', first: 'Y', second: 'Z', third: 'X', centre: ['J', 'K'] },
} as const;

function written(steps: readonly Step[]): string {
  const lines = ['G21 G90 G17 G54 F600', 'G0 X0 Y0 Z5'];
  let per = 1;
  for (const one of steps) {
    if (one.kind === 'units') {
      per = one.inch ? 25.4 : 1;
      lines.push(one.inch ? 'G20 F20' : 'G21 F500');
    } else if (one.kind === 'line') {
      lines.push(`G${one.rapid ? 0 : 1} X${n(one.x / per)} Y ${n(one.y / per)} z${n(one.z / per)}`);
    } else if (one.kind === 'relative') {
      lines.push(
        `G91 G1 X${n(one.x / per)}Y${n(one.y / per)} G90 (back)`.replace(' G90', ''),
        'G90',
      );
    } else if (one.kind === 'drill') {
      lines.push(
        'G17',
        `${one.returnsToR ? 'G99' : 'G98'} ${one.pecks ? 'G83' : 'G81'} X${n(one.x / per)} Y${n(one.y / per)} Z${n(one.z / per)} R${n(one.clear / per)}${one.pecks ? ` Q${n(1.5 / per)}` : ''}`,
        'G80',
      );
    } else {
      lines.push(...arc(one, per));
    }
  }
  return [...lines, 'M2', ''].join('\n');
}

function arc(one: Extract<Step, { kind: 'arc' }>, per: number): readonly string[] {
  const plane = PLANES[one.plane];
  const v = (value: number): number => Number((value / per).toFixed(4));
  // Centre at the origin of the plane: the start is gone to first, so both ends are known.
  const end = one.start + (one.clockwise ? -one.sweep : one.sweep);
  const a0 = v(one.radius * Math.cos(one.start));
  const b0 = v(one.radius * Math.sin(one.start));
  const a1 = v(one.radius * Math.cos(end));
  const b1 = v(one.radius * Math.sin(end));
  const go = `G0 ${plane.first}${a0} ${plane.second}${b0}`;
  const code = `${plane.code} G${one.clockwise ? 2 : 3}`;
  const third = `${plane.third}${v(one.rise)}`;
  const ends = `${plane.first}${a1} ${plane.second}${b1} ${third}`;
  const [i, j] = plane.centre;
  switch (one.form) {
    case 'offset':
      return [go, `${code} ${ends} ${i}${-a0} ${j}${-b0}`];
    case 'place':
      return [go, `G90.1 ${code} ${ends} ${i}0 ${j}0`, 'G91.1'];
    case 'full':
      return [go, `${code} ${i}${-a0} ${j}${-b0} ${third}`];
    case 'radius':
      return [go, `${code} ${ends} R${v(one.sweep > Math.PI ? -one.radius : one.radius)}`];
  }
}
