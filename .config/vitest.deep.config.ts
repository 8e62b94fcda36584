import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: '.',
    include: ['tests/**/*.deep.ts'],
    passWithNoTests: false,
    testTimeout: 600_000,
  },
});
