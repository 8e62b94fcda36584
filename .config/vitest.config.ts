import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: '.',
    include: ['tests/**/*.test.ts'],
    passWithNoTests: false,
    // The tests keep no state, so a worker may keep its modules.
    isolate: false,
    maxWorkers: 2,
    testTimeout: 20_000,
  },
});
