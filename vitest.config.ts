import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'tests/faults/**', 'tests/bench/**', 'node_modules/**'],
    globalSetup: ['tests/support/database-server.ts'],
    env: { BENCHLEAF_LOG: 'silent' },
    testTimeout: 30_000,
  },
});
