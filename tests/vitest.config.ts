import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    dir: 'tests',
    env: { TZ: 'America/Chicago' },
    globalSetup: 'tests/temporary-folder.ts',
    // the tests share nothing that they change, so the files may share the loaded modules: that loads the names and words
    // once for each worker instead of once for each file
    isolate: false,
    maxWorkers: '100%',
    passWithNoTests: false,
    testTimeout: 120_000,
  },
});
