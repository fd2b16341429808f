/**
 * The rules of the code that a machine can hold. Run from the top folder:
 * `eslint --config tests/tree/eslint.config.js src shared tests`. Which folder may import which is held beside this
 * file, in dependency-rules.cjs; rules.test.ts shows each rule biting.
 */
import { builtinModules } from 'node:module';
import { join } from 'node:path';
import { defineConfig } from 'eslint/config';
import tseslint from 'typescript-eslint';

/** Text and records in, values out: no input or output, no clock, no chance. `now` and a seed are arguments. */
const PURE = ['src/answers/**', 'src/dialog/**', 'src/checks/**', 'src/desk/**', 'src/season/**', 'src/sheets/**'];

const clock = 'A pure folder has no clock: take the moment as an argument.';
const chance = 'A pure folder has no chance: take a seed or an id as an argument.';
const outside = 'A pure folder does no input or output: return what should be done.';

const pure = {
  files: PURE,
  rules: {
    'no-restricted-globals': [
      'error',
      ...['setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask', 'performance'].map((name) => ({
        name,
        message: clock,
      })),
      { name: 'crypto', message: chance },
      ...['process', 'console', 'fetch', 'require', 'global', 'globalThis'].map((name) => ({ name, message: outside })),
    ],
    // Reading `Date.now` off the object in any way: called, passed on, or taken apart.
    'no-restricted-properties': [
      'error',
      { object: 'Date', property: 'now', message: clock },
      { object: 'Temporal', property: 'Now', message: clock },
      { object: 'Math', property: 'random', message: chance },
    ],
    'no-restricted-syntax': [
      'error',
      { selector: 'NewExpression[callee.name="Date"]', message: clock },
      { selector: 'CallExpression[callee.name="Date"]', message: clock },
      { selector: 'ImportExpression', message: outside },
      { selector: 'MetaProperty[meta.name="import"]', message: outside },
    ],
    'no-restricted-imports': [
      'error',
      {
        paths: [
          ...builtinModules.map((name) => ({ name, message: outside })),
          ...['better-sqlite3', 'kysely'].map((name) => ({ name, message: outside })),
          { name: 'uuid', message: chance },
        ],
        patterns: [{ group: ['node:*'], message: outside }],
      },
    ],
  },
};

export default defineConfig(
  // An exception to a rule is argued for here, not switched off in a file.
  { linterOptions: { noInlineConfig: true } },
  {
    files: ['**/*.ts'],
    extends: [tseslint.configs.recommendedTypeChecked],
    languageOptions: {
      parserOptions: { project: 'tests/tsconfig.json', tsconfigRootDir: join(import.meta.dirname, '..', '..') },
    },
    rules: {
      // `== null` means null or undefined, and is the short way to say so.
      eqeqeq: ['error', 'always', { null: 'ignore' }],
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      // A leading `_` says that a place has to be named though nobody reads it: a column of a table, a parameter.
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_', destructuredArrayIgnorePattern: '^_', caughtErrors: 'all' },
      ],
      // Query builders and parsers are taken apart by name throughout; those that need `this` say so in their types.
      '@typescript-eslint/unbound-method': 'off',
      // A channel's or a store's function keeps its promise even where today's body has nothing to wait for.
      '@typescript-eslint/require-await': 'off',
    },
  },
  pure,
  {
    files: ['tests/**/*.test.ts'],
    rules: {
      'no-restricted-syntax': [
        'error',
        {
          selector:
            'MemberExpression[object.name=/^(test|it|describe)$/][property.name=/^(skip|only|todo|skipIf|fails)$/]',
          message: 'Every test runs, and runs always.',
        },
      ],
    },
  },
);
