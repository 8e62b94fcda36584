import { describe, it } from 'vitest';
import { expectAnyPartLawful } from './any-part.ts';

describe('parts of the jig of any sizes', () => {
  it('are sound, or refused with what would fit', async () => {
    await expectAnyPartLawful(62, 1500);
  });
});
