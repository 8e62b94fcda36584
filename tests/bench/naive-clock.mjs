// The wall clock's two radial needs as a maker would write them: a function a step, an object a point, Math.random.
// Written out from registration.md for this job alone: milled stops, buttons, opposite corners, zero kept.

const L = 280.5;
const H = 180;
const THICK = 24;
const TOUCH = 12;

/** Box and Muller's pair, one of it thrown away, as most people write it. */
const randomNormal = () =>
  Math.sqrt(-2 * Math.log(1 - Math.random())) * Math.cos(2 * Math.PI * Math.random());

const drawn = (d, normal) => {
  switch (d.kind) {
    case 'normal':
      return d.mean + d.sd * normal();
    case 'half-normal':
      return Math.abs(d.sigma * normal());
    case 'either':
      return Math.random() < 0.5 ? d.low : d.high;
    case 'exactly':
      return d.value;
    default:
      return d.low + (d.high - d.low) * Math.random();
  }
};

/** The blank's pose on one side: turned by `theta`, its corner off by (a, b). */
function seat(v, side) {
  const isFront = side === 'front-up';
  const thick = THICK + v.thickness;
  const leans = v['machine-lean'] / (1 + v['scale/y']);
  const fence = -(v['cutter-radius/flat 6'] + v['milled-face/fence']) - v[`give/${side}/fence`];
  const face = isFront ? 'milled-face/side-first' : 'milled-face/side-second';
  const deeper = (v['cutter-radius/flat 6'] + v[face]) * Math.sqrt(1 + leans * leans);
  const stop = isFront
    ? { at: -deeper, slope: leans }
    : { at: -v['scale/x'] * L - deeper, slope: -leans };
  const bevel = (edge) => (isFront ? 1 : -1) * v[`bevel/${edge}`] * (TOUCH - thick / 2);
  const contacts = (isFront ? [30, 250] : [30.5, 250.5]).map((a, k) => ({
    a,
    bump: v[k === 0 ? 'bump/lower/30' : 'bump/lower/250'],
    gap: v[`seat-gap/${side}/fence-${isFront ? k + 1 : 2 - k}`],
  }));
  const step = 1 / Math.sqrt(1 + stop.slope ** 2);
  const b = -(v['cutter-radius/flat 6'] + v['milled-face/fence']) + 90 * step;
  const touch = { a: stop.at + stop.slope * b - v[`give/${side}/side`], b };
  const sideGap = v[isFront ? 'seat-gap/front-up/side-1' : 'seat-gap/back-up/side2-1'];
  const sideOut = v['bump/left/90'] + sideGap + bevel('left');
  const sag = (crook, span, t) => ((4 * crook) / span) * t * (span - t);

  let pose = { theta: 0, a: 0, b: 0 };
  for (let pass = 0; pass < 3; pass++) {
    const [c, s] = [Math.cos(pose.theta), Math.sin(pose.theta)];
    const outs = contacts.map(({ a, bump, gap }) => {
      const t = c * a + s * fence - pose.a;
      return sag(v['crook/lower'], L, t) + bump + gap;
    });
    const theta = Math.asin((outs[1] - outs[0]) / (contacts[1].a - contacts[0].a));
    const [c2, s2] = [Math.cos(theta), Math.sin(theta)];
    const backB = c2 * fence - s2 * contacts[0].a + outs[0] + bevel('lower');
    const along = c2 * touch.b - s2 * touch.a;
    const line = c2 * touch.a + s2 * touch.b - v.square * along;
    const far = line + sag(v['crook/left'], H, along - pose.b) + sideOut;
    pose = { theta, a: far + v.square * backB, b: backB };
  }
  return pose;
}

/** Where a cut commanded at a place of the blank lands off it. */
function land(v, side, pose, cut, at) {
  const x = side === 'front-up' ? at.x : L - at.x;
  const above = THICK + v.thickness - TOUCH;
  const noise = (axis) => v[`repeatability/${cut}/${axis}`] + v[`lost-motion/${cut}/${axis}`];
  const dx = v['scale/x'] * x + v['machine-lean'] * at.y + noise('x') + v['cutter-lean/x'] * above;
  const dy = v['scale/y'] * at.y + noise('y') + v['cutter-lean/y'] * above;
  const a = at.x + (side === 'front-up' ? dx : -dx);
  const b = at.y + dy;
  const [c, s] = [Math.cos(pose.theta), Math.sin(pose.theta)];
  return { x: c * a + s * b - pose.a - at.x, y: c * b - s * a - pose.b - at.y };
}

/** How far the backs miss their fronts, mm, of the two needs. */
export function misses(v) {
  const front = seat(v, 'front-up');
  const back = seat(v, 'back-up');
  const apart = (one, other, at) => {
    const from = land(v, 'front-up', front, one, at);
    const to = land(v, 'back-up', back, other, at);
    return Math.hypot(to.x - from.x, to.y - from.y);
  };
  return [
    apart('feature shaft hole', 'feature movement pocket', { x: 140, y: 90 }),
    apart('front of corner check', 'back of corner check', { x: 70, y: 120 }),
  ];
}

/** `inputs` are [name, distribution]; statistics of each need, a plain sort for its ends. */
export function naiveClock(inputs, limits, trials, normal = randomNormal) {
  const parts = [];
  for (let i = 0; i < trials; i++) {
    const values = Object.fromEntries(inputs.map(([name, d]) => [name, drawn(d, normal)]));
    parts.push({ values, misses: misses(values) });
  }
  return limits.map((limit, k) => {
    const each = parts.map((part) => part.misses[k]);
    const mean = each.reduce((sum, one) => sum + one, 0) / trials;
    const sd = Math.sqrt(each.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (trials - 1));
    const sorted = [...each].sort((a, b) => a - b);
    return {
      mean,
      sd,
      low: sorted[Math.floor(0.025 * trials)],
      high: sorted[Math.floor(0.975 * trials)],
      good: each.filter((one) => one <= limit).length / trials,
    };
  });
}
