import type { TakeUp } from '../../job/job.ts';
import type { Side } from '../../setup/placing.ts';
import type { Html } from '../html.ts';
import { markup } from '../html.ts';
import { towards } from './towards.ts';

/** What to do with the little play that is left between the piece and `by`, which holds it. */
export function takeUpWords(takeUp: TakeUp, piece: 'blank' | 'part', by: string): Html {
  return takeUp === 'anywhere'
    ? markup`The ${piece} has a little play; it may lie anywhere in it, so do not bend or wedge it to one side.`
    : markup`<b>Push the ${piece} ${towards(takeUp)} until ${by} it</b>, and keep it pushed while you clamp. In each placing it is pushed this way on the machine.`;
}

const ARROWS: Readonly<Record<Side, string>> = {
  near: '↓ push',
  far: '↑ push',
  left: '← push',
  right: 'push →',
};

/** What the drawing says on the side that the piece is pushed to. */
export function pushedSide(takeUp: TakeUp, side: Side): readonly string[] {
  return takeUp === side ? [ARROWS[side]] : [];
}
