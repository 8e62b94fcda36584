import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { it } from 'vitest';
import { filesNamedBy, readJob } from '../../src/job/read.ts';
import { holdPlan } from '../../src/hold/plan.ts';
import { placingsOf } from '../../src/setup/place.ts';
it('dbg', () => {
  for (const name of ['wall-clock-plain','wall-clock-plain']) {
    const path = resolve('jigs', `${name}.yaml`);
    const bytes = readFileSync(path);
    const files = new Map(filesNamedBy({ name: path, bytes }).map((f) => [f, readFileSync(resolve(dirname(path), f))] as const));
    const read = readJob({ name: path, bytes }, files as never);
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    const { job, holding } = read.value;
    const t = performance.now();
    const plan = holdPlan({ job, holding, placings: placingsOf(job), standing: { frontUp: [], backUp: [] }, programs: { frontUp: null, backUp: null } });
    console.log(name, Math.round(performance.now() - t), 'ms');
    for (const p of [plan.frontUp, plan.backUp]) if (0) console.log(p.placing.faceUp, p.force, 'free', p.candidates.free.length, 'refused', p.candidates.refused.map((r) => r.because.kind).join(' '), 'reach-', p.candidates.outOfReachCount, p.layout?.search, p.layout?.straps.map((s) => s.bodies[0]!.name + ' ' + s.side + ' ' + Math.round(s.leastN)), p.verdict, 'crush', p.crush.map((c) => [c.pressure, c.gentleTorqueNm]), p.pieces.map((x) => [x.piece.name, x.by, x.verdict?.factor, x.remedies]), p.clashes.length, p.travel);
  }
});
