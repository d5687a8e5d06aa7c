import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { LongestFirst } from './tests/support/longest-first.ts';

const needApp = ['tests/http/**/*.test.ts', 'tests/browser/**/*.test.ts'];
const slow = ['tests/faults/**', 'tests/bench/**'];

export default defineConfig({
  test: {
    env: { BENCHLEAF_LOG: 'silent' },
    // Files share processes, and in them what is loaded, one program and one browser.
    isolate: false,
    setupFiles: ['tests/support/each-file.ts'],
    // A test waits a third of its time, for a picture that plays or a job that is due: another can use it.
    maxWorkers: availableParallelism() + 1,
    sequence: { sequencer: LongestFirst },
    // Only to end what hangs: recordings are worked on at low priority, so a busy machine can take many times longer.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // A busy machine may let a page wait for longer than the usual second.
    expect: { poll: { timeout: 15_000 } },
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          include: ['tests/**/*.test.ts'],
          exclude: [...needApp, ...slow],
          globalSetup: ['tests/support/database-server.ts'],
          // Read once in a process, so the same for all files in it; what opens a database names it.
          env: {
            DATABASE_URL: 'postgresql://nobody@127.0.0.1/none',
            BENCHLEAF_FILES: '/nowhere',
            BENCHLEAF_ADDRESS: 'https://rings.example',
            BENCHLEAF_SECRET: 'a secret of tests alone, long enough',
          },
        },
      },
      {
        extends: true,
        test: {
          name: 'app',
          include: needApp,
          globalSetup: ['tests/support/build.ts', 'tests/support/database-server.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'faults',
          include: ['tests/faults/**/*.test.ts'],
          globalSetup: ['tests/support/build.ts'],
          testTimeout: 1_800_000,
          hookTimeout: 120_000,
          fileParallelism: false,
        },
      },
    ],
  },
});
