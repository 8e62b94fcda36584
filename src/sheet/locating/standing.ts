import type { Face } from '../../job/job.ts';
import type { Body } from '../../sweep/body.ts';

/** Something that locates and stands on the bed, and with which face up. */
export interface Standing {
  readonly body: Body;
  readonly placings: readonly Face[];
}
