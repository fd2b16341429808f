import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    dir: 'tests',
    env: { TZ: 'America/Chicago' },
    globalSetup: 'tests/temporary-folder.ts',
    passWithNoTests: false,
    testTimeout: 120_000,
  },
});
