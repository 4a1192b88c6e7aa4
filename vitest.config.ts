import { defineConfig } from 'vitest/config'

/**
 * `node` holds all that needs no built program; `desk` drives the built program in real browsers, each file with
 * hosts, records and a browser of its own; `bench` and `long` are run by their own commands, one file at a time.
 */
export default defineConfig({
  test: {
    // Both cores of a small machine: left to itself the runner would use one of them.
    maxWorkers: '100%',
    setupFiles: ['tests/seed.ts'],
    projects: [
      {
        test: {
          name: 'node',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: ['tests/desk/**', 'tests/long/**'],
          // Only what hangs: a whole library on a busy machine takes its time.
          testTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'desk',
          include: ['tests/desk/**/*.test.ts'],
          // A real browser on a small machine under load may be late once; a defect is there the second time too.
          retry: 1,
          testTimeout: 120_000,
          hookTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'bench',
          include: ['tests/bench/**/*.figures.ts'],
          fileParallelism: false,
          testTimeout: 300_000,
          hookTimeout: 120_000,
        },
      },
      {
        test: {
          name: 'long',
          include: ['tests/long/**/*.test.ts'],
          fileParallelism: false,
          testTimeout: 5_400_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
})
