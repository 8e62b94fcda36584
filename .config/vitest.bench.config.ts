import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: { root: '.', benchmark: { include: ['tests/bench/**/*.bench.ts'] } },
});
