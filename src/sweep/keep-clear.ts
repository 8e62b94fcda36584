import type { Cutter, Job } from '../job/job.ts';
import type { Placing } from '../setup/placing.ts';
import type { Body } from './body.ts';
import type { Clash, Margin } from './clash.ts';
import { featureClashes, waysOf } from './feature-clashes.ts';
import { placedMoves } from './placed-moves.ts';
import { programClashes } from './program-clashes.ts';
import type { Program } from './program/program.ts';

/** What is cut in a placing: what the job's features ask for, or what a program does. */
export type Cuts =
  | { readonly by: 'features' }
  | {
      readonly by: 'program';
      readonly program: Program;
      readonly cutterOf: (tool: number | null) => Cutter;
    };

/** Asks which bodies are come too near to, and by how much; no clash means none within the margin. */
export type KeepClear = (bodies: readonly Body[], margin: Margin) => readonly Clash[];

/** Looks at a placing's cuts once; every body may then be asked about. Bodies lie in the layout frame. */
export function keepClearOf(job: Job, placing: Placing, cuts: Cuts): KeepClear {
  const which = placing.faceUp === 'front' ? 'front-up' : 'back-up';
  if (cuts.by === 'features') {
    const ways = waysOf(job, placing);
    return (bodies, margin) => featureClashes(job, which, ways, bodies, margin);
  }
  const moves = placedMoves(job, placing, cuts.program, cuts.cutterOf);
  return (bodies, margin) => programClashes(job, which, moves, bodies, margin);
}
