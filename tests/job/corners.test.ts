import { describe, expect, it } from 'vitest';
import { faultsOf } from './from-disk.ts';
import { JOB, otherwise, SHOP } from './sound.ts';

const CORNERS = ['near-left', 'near-right', 'far-left', 'far-right'] as const;
const FENCES = ['lower', 'upper', 'left', 'right'] as const;
const TURNS = ['about-x', 'about-y'] as const;

const isSound = (front: string, back: string, fence: string, turn: string): boolean => {
  const corner = otherwise(
    JOB,
    '{front-up: near-left, back-up: near-left}',
    `{front-up: ${front}, back-up: ${back}}`,
  );
  const job = otherwise(
    otherwise(corner, 'lower-edge', `${fence}-edge`),
    'turn: about-y',
    `turn: ${turn}`,
  );
  return faultsOf(job, SHOP).length === 0;
};

describe('corners, fence and turn', () => {
  // Written as a woodworker would say it, from the picture, not from the program's tables.
  const standsOn = { lower: 'near', upper: 'far', left: 'left', right: 'right' } as const;

  it('go together when both corners are on the fence and a second one is met by the turn', () => {
    const sound: string[] = [];
    for (const front of CORNERS)
      for (const back of CORNERS)
        for (const fence of FENCES)
          for (const turn of TURNS) {
            const bothOnFence = [front, back].every((corner) => corner.includes(standsOn[fence]));
            const alongTurn = (fence === 'lower' || fence === 'upper') === (turn === 'about-y');
            const expected = bothOnFence && (front === back || alongTurn);
            expect(isSound(front, back, fence, turn), `${front} ${back} ${fence} ${turn}`).toBe(
              expected,
            );
            if (expected) sound.push(front);
          }
    // Same corner: 4 corners x 2 fences x 2 turns; opposite: 4 corners x 2 fences, one turn each.
    expect(sound).toHaveLength(24);
  });
});
