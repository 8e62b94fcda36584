// `npm run bench`: one table of what the engine does against slower ways of doing the same, all in one run, each
// row the median of several, as ratios: the milliseconds are this machine's.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import jstat from 'jstat';
import { loadJob } from '../../dist/cli/load.js';
import { workerPool } from '../../dist/cli/worker-pool.js';
import { BATCH } from '../../dist/num/batch.js';
import { misfitModel } from '../../dist/setup/misfit.js';
import { sourcesOf } from '../../dist/sources/sources-of.js';
import { fastAnswer } from '../../dist/stackup/fast/fast.js';
import { pointsOf } from '../../dist/stackup/fast/points.js';
import { askedOf } from '../../dist/stackup/figure.js';
import { modelOf } from '../../dist/stackup/model-of.js';
import { planOf } from '../../dist/stackup/plan.js';
import { varianceShares } from '../../dist/stackup/shares.js';
import { blockWorker, taskOf } from '../../dist/stackup/tally.js';
import { totalsOf } from '../../dist/stackup/totals.js';

const ROUNDS = 5;
const TRIALS = 102_400;
const FEW = 10_240;
const ROOT = join(import.meta.dirname, '..', '..');

const median = (values) => values.toSorted((a, b) => a - b)[values.length >> 1];
/** Processor milliseconds of this program: what else the machine does stretches the wall clock's. */
const busy = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
const timed = async (work, rounds = ROUNDS, clock = busy) => {
  await work();
  const times = [];
  for (let k = 0; k < rounds; k++) {
    const began = clock();
    await work();
    times.push(clock() - began);
  }
  return median(times);
};
const wall = () => performance.now();

function subject(kinds) {
  const { job: whole } = loadJob(join(ROOT, 'jigs', 'wall-clock.yaml'));
  const job = {
    ...whole,
    needs: whole.needs.filter(({ kind }) => kinds === null || kinds.includes(kind)),
  };
  const misfit = misfitModel(job);
  const sources = sourcesOf(job, misfit.deviations);
  const model = modelOf(misfit, sources);
  const asked = askedOf(misfit.judged);
  return { job, model, asked, task: taskOf(model, asked, planOf(1, TRIALS)) };
}

function engine({ model, task }) {
  const work = blockWorker(model, task);
  const totals = totalsOf(task);
  for (let block = 0; block < task.mostBlocks; block++) totals.take(work(block));
  return totals.figure(0);
}

async function threaded({ task }, pool) {
  const totals = totalsOf(task);
  const tallies = Array.from({ length: task.mostBlocks }, (_, block) => pool.work(block));
  for (const tally of tallies) totals.take(await tally);
}

/** Box and Muller's pair, one of it thrown away, as most people write it. */
const randomNormal = () =>
  Math.sqrt(-2 * Math.log(1 - Math.random())) * Math.cos(2 * Math.PI * Math.random());
const naiveDraw = (d, normal) => {
  switch (d.kind) {
    case 'normal':
      return d.mean + d.sd * normal();
    case 'half-normal':
      return Math.abs(d.sigma * normal());
    case 'triangular':
      return d.low + ((d.high - d.low) * (Math.random() + Math.random())) / 2;
    case 'either':
      return Math.random() < 0.5 ? d.low : d.high;
    case 'exactly':
      return d.value;
    default:
      return d.low + (d.high - d.low) * Math.random();
  }
};

/** Trial by trial through the same model, objects and arrays, sorted with a comparing function. */
function naive({ model, asked }, trials, normal, statistics) {
  const parts = [];
  const draws = new Float64Array(model.inputs.length * BATCH);
  const out = new Float64Array(model.outputCount * BATCH);
  for (let i = 0; i < trials; i++) {
    const drawn = model.inputs.map(({ distribution }) => naiveDraw(distribution, normal));
    drawn.forEach((value, k) => {
      draws[k * BATCH] = value;
    });
    model.evaluate(draws, 1, out);
    parts.push({
      figures: asked.figures.map((figure) =>
        figure.kind === 'column'
          ? out[figure.at * BATCH]
          : Math.hypot(out[figure.x * BATCH], out[(figure.x + 1) * BATCH]),
      ),
    });
  }
  return asked.figures.map((_, f) => statistics(parts.map(({ figures }) => figures[f])));
}

const plainStatistics = (values) => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const sd = Math.sqrt(
    values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1),
  );
  const sorted = [...values].sort((a, b) => a - b);
  return {
    mean,
    sd,
    low: sorted[Math.floor(0.025 * values.length)],
    high: sorted[Math.floor(0.975 * values.length)],
  };
};
const jstatStatistics = (values) => ({
  mean: jstat.mean(values),
  sd: jstat.stdev(values, true),
  ends: jstat.quantiles(values, [0.025, 0.5, 0.975]),
});

function numpy({ model, asked }, trials) {
  const input = JSON.stringify({
    inputs: model.inputs.map(({ distribution }) => distribution),
    outputs: asked.figures.length,
    trials,
    rounds: ROUNDS,
  });
  const run = spawnSync('python3', [join(import.meta.dirname, 'chunked.py')], {
    input,
    encoding: 'utf8',
  });
  return run.status === 0 ? median(run.stdout.trim().split('\n').map(Number)) : null;
}

const rows = [];
const row = (what, ms, trials, own) =>
  rows.push({
    what,
    'cpu ns a trial': ((ms / trials) * 1e6).toFixed(0),
    'times ours': own === null ? '' : (ms / trials / own).toFixed(1),
  });

for (const [name, kinds] of [
  ['two radial needs', ['concentric', 'misalignment']],
  ['all five needs', null],
]) {
  const one = subject(kinds);
  const ms = await timed(() => engine(one));
  const own = ms / TRIALS;
  row(`${name}: the engine, one thread, all statistics`, ms, TRIALS, own);
  const walls = [];
  for (const threads of [1, 2]) {
    const pool = workerPool({ job: one.job, task: one.task }, threads);
    walls.push(await timed(() => threaded(one, pool), ROUNDS, wall));
    pool.close();
  }
  rows.push({
    what: `${name}: two worker threads against one (wall clock; idle machine only)`,
    'times ours': (walls[0] / walls[1]).toFixed(1),
  });
  row(
    `${name}: naive JS (same model, trial by trial)`,
    await timed(() => naive(one, FEW, randomNormal, plainStatistics), 3),
    FEW,
    own,
  );
  row(
    `${name}: jstat sampling and statistics`,
    await timed(() => naive(one, FEW, () => jstat.normal.sample(0, 1), jstatStatistics), 3),
    FEW,
    own,
  );
  const py = numpy(one, TRIALS);
  if (py === null) rows.push({ what: `${name}: numpy is not here` });
  else row(`${name}: chunked numpy, sampling and statistics alone`, py, TRIALS, own);
}
console.table(rows);

const two = subject(['concentric', 'misalignment']);
const quick = [];
for (const count of [256, 512, 1024]) {
  const points = pointsOf(two.model, 1, count);
  let answer;
  const ms = await timed(() => (answer = fastAnswer(two.model, two.asked, points, 1)), 15);
  quick.push({
    evaluations: answer.evaluations,
    ms: ms.toFixed(1),
    'fewest digits': answer.digits,
  });
}
console.table(quick);

const each = two.model.inputs.map((_, k) => [k]);
let shares;
const shareMs = await timed(
  () => (shares = varianceShares(two.model, each, each.length, [two.asked.figures[0]], 1, 3)),
  3,
);
const worst = Math.max(...shares[0].groups.map(({ se }) => se));
console.log(
  `shares of ${each.length} inputs: ${shareMs.toFixed(0)} ms, worst standard error ${worst.toFixed(3)}`,
);
const before = process.memoryUsage().arrayBuffers;
const many = totalsOf(two.task);
const work = blockWorker(two.model, two.task);
let most = 0;
for (let block = 0; block < 10; block++) {
  many.take(work(block));
  most = Math.max(most, process.memoryUsage().arrayBuffers - before);
}
console.log(
  `arrays while trials run, at most ${(most / 1e6).toFixed(1)} MB (bins, draws and results; the same for any number of trials)`,
);
