import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: '.',
    include: ['tests/**/*.deep.ts'],
    passWithNoTests: false,
    maxWorkers: 2,
    testTimeout: 600_000,
  },
});
