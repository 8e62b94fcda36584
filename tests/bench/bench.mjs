// `npm run bench`: one table of what the engine does against slower ways of doing the same, all in one run. The ways take
// turns, each row is the median of its turns, by processor time: what else the machine does stretches the wall clock's.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import jstat from 'jstat';
import { loadJob } from '../../dist/cli/load.js';
import { workerPool } from '../../dist/cli/worker-pool.js';
import { deviationKey } from '../../dist/setup/deviation.js';
import { misfitModel } from '../../dist/setup/misfit.js';
import { sourcesOf } from '../../dist/sources/sources-of.js';
import { commonPoints } from '../../dist/stackup/fast/points.js';
import { quickly } from '../../dist/stackup/fast/quickly.js';
import { askedOf } from '../../dist/stackup/figure.js';
import { inputsOf } from '../../dist/stackup/inputs.js';
import { modelOf } from '../../dist/stackup/model-of.js';
import { planOf } from '../../dist/stackup/plan.js';
import { varianceShares } from '../../dist/stackup/shares.js';
import { blockWorker, taskOf } from '../../dist/stackup/tally.js';
import { totalsOf } from '../../dist/stackup/totals.js';
import { naiveClock } from './naive-clock.mjs';

const ROUNDS = 5;
const TRIALS = 102_400;
const FEW = 10_240;
const ROOT = join(import.meta.dirname, '..', '..');

const median = (values) => values.toSorted((a, b) => a - b)[values.length >> 1];
const busy = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

function subject(name, kinds) {
  const { job: whole } = loadJob(join(ROOT, 'jigs', `${name}.yaml`));
  const needs = whole.needs.filter(({ kind }) => kinds === null || kinds.includes(kind));
  const job = { ...whole, needs };
  const misfit = misfitModel(job);
  const sources = sourcesOf(job, misfit.deviations);
  const model = modelOf(misfit, sources);
  const asked = askedOf(misfit.judged);
  const inputs = inputsOf(sources).map(({ deviation, source }) => [
    deviationKey(misfit.deviations[deviation]),
    source.distribution,
  ]);
  const limits = misfit.judged.map(({ high }) => high);
  const task = taskOf(model, asked, planOf(1, TRIALS));
  return { job, misfit, sources, model, asked, inputs, limits, task };
}

function engine({ model, task }) {
  const work = blockWorker(model, task);
  const totals = totalsOf(task);
  for (let block = 0; block < task.mostBlocks; block++) totals.take(work(block));
  return task.asked.questions.map(({ lowest }, q) => {
    const { mean, sd, interval95 } = totals.figure(lowest);
    const [low, high] = interval95;
    return { mean, sd, low, high, good: totals.good[q] / totals.trials() };
  });
}

async function threaded({ task }, pool) {
  const totals = totalsOf(task);
  const tallies = Array.from({ length: task.mostBlocks }, (_, block) => pool.work(block));
  for (const tally of tallies) totals.take(await tally);
}

const PYTHONS = ['/usr/bin/python3', 'python3'];
function numpy({ inputs, limits }, trials, python) {
  const input = JSON.stringify({ inputs, limits, trials, rounds: 1 });
  const run = spawnSync(python, [join(import.meta.dirname, 'chunked.py')], {
    input,
    encoding: 'utf8',
  });
  return run.status === 0 ? JSON.parse(run.stdout) : null;
}

/** Largest difference of all statistics from the engine's, in standard errors of both; ends by Rayleigh's densities there, 0.14 and 0.044 a sd. */
function offBy(told, ours, trials) {
  const all = told.flatMap((one, k) => {
    const { mean, sd, low, high, good } = ours[k];
    const root = 1 / Math.sqrt(1 / trials + 1 / TRIALS);
    return [
      (one.mean - mean) / (sd / root),
      (one.sd - sd) / (sd / root),
      (one.low - low) / ((0.156 / 0.14) * (sd / root)),
      (one.high - high) / ((0.156 / 0.044) * (sd / root)),
      (one.good - good) / (Math.sqrt(good * (1 - good)) / root),
    ];
  });
  return Math.max(...all.map(Math.abs));
}

const two = subject('wall-clock', ['concentric', 'misalignment']);
const python = PYTHONS.find((one) => numpy(two, 100, one) !== null);
const pools = [1, 2].map((threads) => workerPool({ job: two.job, task: two.task }, threads));
const self = (work) => async () => {
  const began = busy();
  const told = await work();
  return { ms: busy() - began, told };
};
const wall = (work) => async () => {
  const began = performance.now();
  await work();
  return { ms: performance.now() - began, told: null };
};
const ways = [
  ['ours, one thread', TRIALS, self(() => engine(two))],
  ['ours, one worker, by the clock', TRIALS, wall(() => threaded(two, pools[0]))],
  ['ours, two workers, by the clock', TRIALS, wall(() => threaded(two, pools[1]))],
  ['naive JS, model written out', FEW, self(() => naiveClock(two.inputs, two.limits, FEW))],
  [
    'jstat sampling, same model',
    FEW,
    self(() => naiveClock(two.inputs, two.limits, FEW, () => jstat.normal.sample(0, 1))),
  ],
  ...(python === undefined
    ? []
    : [['chunked numpy, SFC64', TRIALS, () => Promise.resolve(numpy(two, TRIALS, python))]]),
];
const times = ways.map(() => []);
const last = ways.map(() => null);
for (let round = -1; round < ROUNDS; round++)
  for (const [k, [, , run]] of ways.entries()) {
    const { ms, told } = await run();
    if (round >= 0) times[k].push(ms);
    last[k] = told;
  }
for (const pool of pools) pool.close();
const perTrial = ways.map(([, trials], k) => (median(times[k]) / trials) * 1e6);
console.log(`wall clock, two radial needs, ${two.inputs.length} inputs; all statistics`);
console.table(
  ways.map(([what, trials], k) => ({
    what,
    'ns a trial': perTrial[k].toFixed(0),
    'times ours': (perTrial[k] / perTrial[0]).toFixed(2),
    'off by, se': last[k] === null || k === 0 ? '' : offBy(last[k], last[0], trials).toFixed(1),
  })),
);
console.log(
  `two workers: ${(perTrial[1] / perTrial[2]).toFixed(2)} times one (says something on an idle machine only)`,
);
if (python === undefined) console.log('numpy is not here');

const quick = (one, count) => {
  const points = commonPoints(1, count);
  let answer;
  const each = [];
  for (let k = 0; k < 12; k++) {
    const began = busy();
    answer = quickly(one.misfit, one.sources, { seed: 1, points });
    if (k > 1) each.push(busy() - began);
  }
  const numbers = answer.needs.flatMap(({ mean, sd, low, high, bad }) => [
    mean,
    sd,
    low,
    high,
    bad,
  ]);
  return {
    evaluations: answer.evaluations,
    ms: median(each).toFixed(1),
    'two digits': `${numbers.filter(({ digits }) => digits >= 2).length} of ${numbers.length}`,
    'fewest digits': answer.digits,
    'fell back': answer.needs.filter(({ fellBack }) => fellBack).length,
  };
};
console.log('quick answers, warm');
console.table([
  ...[256, 512, 1024].map((count) => ({ job: 'wall clock, two needs', ...quick(two, count) })),
  ...['wall-clock', 'tray', 'chime-box', 'compass-cover'].map((name) => ({
    job: `${name}, all needs`,
    ...quick(subject(name, null), 256),
  })),
]);

const each = two.model.inputs.map((_, k) => [k]);
const shares = [2, 4, 8].map((batches) => {
  const spent = [];
  let found;
  for (let k = 0; k < 4; k++) {
    const began = busy();
    found = varianceShares(two.model, each, each.length, two.asked.figures, 1, batches);
    if (k > 0) spent.push(busy() - began);
  }
  const worst = Math.max(...found.flatMap(({ groups }) => groups.map(({ se }) => se)));
  return { points: batches * 1024, ms: median(spent).toFixed(0), 'worst se': worst.toFixed(4) };
});
console.log(`total shares of ${each.length} inputs, two needs`);
console.table(shares);

console.log('all needs of other jobs, one thread');
console.table(
  ['wall-clock', 'tray', 'enclosure-lid', 'chime-box', 'compass-cover'].map((name) => {
    const one = subject(name, null);
    const task = taskOf(one.model, one.asked, planOf(1, FEW));
    engine({ model: one.model, task });
    const began = busy();
    engine({ model: one.model, task });
    return { job: name, 'ns a trial': (((busy() - began) / FEW) * 1e6).toFixed(0) };
  }),
);

const many = subject('wall-clock', ['concentric', 'misalignment']);
const task = taskOf(many.model, many.asked, planOf(1, 10_000_000));
globalThis.gc?.();
const before = process.memoryUsage().arrayBuffers;
const began = busy();
const totals = totalsOf(task);
const work = blockWorker(many.model, task);
let most = 0;
for (let block = 0; block < task.mostBlocks; block++) {
  totals.take(work(block));
  if (block % 50 !== 0) continue;
  // What is no longer used is not held; without --expose-gc it still counts.
  globalThis.gc?.();
  most = Math.max(most, process.memoryUsage().arrayBuffers - before);
}
console.log(
  `${totals.trials()} trials in ${((busy() - began) / 1000).toFixed(1)} s of processor, arrays at most ${(most / 1e6).toFixed(1)} MB, resident ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB`,
);
