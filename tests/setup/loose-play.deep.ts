import { describe, expect, it } from 'vitest';
import { compared } from './loose-play/agreement.ts';
import { CASES } from './loose-play/cases.ts';

describe('taken up anywhere', () => {
  it.each(Object.keys(CASES))(
    'every pose is as likely as another, on 5000 of them: %s',
    (name) => {
      const { kept, apart } = compared(CASES[name]!(), 5000, 200_000, 0.003);
      expect(kept).toBeGreaterThan(4000);
      expect(apart).toEqual([]);
    },
    120_000,
  );
});
