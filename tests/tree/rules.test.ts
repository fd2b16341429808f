/** Each rule of the tree is shown an offence and must bite; beside it stands what it must let through. */
import { execFile } from 'node:child_process';
import { mkdtempSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';
import { ESLint } from 'eslint';
import tseslint from 'typescript-eslint';
import { afterAll, describe, expect, test } from 'vitest';
import { z } from 'zod';

const root = join(import.meta.dirname, '..', '..');

describe('which folder may import which', () => {
  const other = (path: string) => `import '${path}';\n`;
  const typeOnly = (path: string) => `import type { A } from '${path}';\nexport type B = A;\n`;

  /** A small tree that breaks every rule once, and what is said of each file; null: it may. */
  const table: [file: string, content: string, said: string | null][] = [
    ['src/answers/breaks.ts', other('../dialog/leaf.js'), 'imports-of-answers'],
    ['src/answers/breaks-by-type.ts', typeOnly('../checks/leaf.js'), 'imports-of-answers'],
    ['src/answers/keeps.ts', typeOnly('../../shared/leaf.js') + other('./leaf.js'), null],
    ['src/checks/breaks.ts', other('../answers/leaf.js'), 'imports-of-checks'],
    ['src/season/breaks.ts', other('../checks/leaf.js'), 'imports-of-season'],
    ['src/settings/breaks.ts', other('../store/leaf.js'), 'imports-of-settings'],
    ['src/settings/keeps.ts', other('../../shared/leaf.js'), null],
    ['src/store/breaks.ts', other('../settings/leaf.js'), 'imports-of-store'],
    ['src/dialog/breaks.ts', other('../desk/leaf.js'), 'imports-of-dialog'],
    ['src/dialog/keeps.ts', other('../answers/leaf.js') + other('../checks/leaf.js'), null],
    ['src/desk/breaks.ts', other('../dialog/leaf.js'), 'imports-of-desk'],
    ['src/desk/keeps.ts', other('../answers/leaf.js') + other('../checks/leaf.js'), null],
    ['src/exchange/breaks.ts', other('../answers/leaf.js'), 'imports-of-exchange'],
    ['src/exchange/keeps.ts', ['store', 'dialog', 'desk'].map((name) => other(`../${name}/leaf.js`)).join(''), null],
    ['src/channels/breaks.ts', other('../dialog/leaf.js'), 'imports-of-channels'],
    ['src/channels/keeps.ts', other('../exchange/leaf.js'), null],
    ['src/publish/breaks.ts', other('../store/leaf.js'), 'imports-of-publish'],
    ['src/publish/keeps.ts', other('../season/leaf.js'), null],
    ['src/sheets/breaks.ts', other('../dialog/leaf.js'), 'imports-of-sheets'],
    ['src/sheets/keeps.ts', other('../answers/leaf.js'), null],
    ['src/page/breaks.ts', other('../store/leaf.js'), 'imports-of-page'],
    ['src/page/keeps.ts', ['exchange', 'publish', 'season'].map((name) => other(`../${name}/leaf.js`)).join(''), null],
    ['src/commands/keeps.ts', ['settings', 'store', 'page'].map((name) => other(`../${name}/leaf.js`)).join(''), null],
    ['src/way-in-breaks.ts', other('./store/leaf.js'), 'imports-of-the-way-in'],
    ['src/way-in-keeps.ts', other('./commands/leaf.js'), null],
    ['src/new-folder/breaks.ts', other('../../shared/leaf.js'), 'folder-without-a-line'],
    ['shared/breaks.ts', other('../src/answers/leaf.js'), 'imports-of-shared'],
    ['shared/breaks-by-type.ts', typeOnly('../src/settings/leaf.js'), 'imports-of-shared'],
    ['src/store/breaks-by-test.ts', other('../../tests/leaf.js'), 'imports-of-tests'],
    ['src/store/one.ts', typeOnly('./two.js'), 'no-cycle'],
    ['src/store/two.ts', typeOnly('./one.js'), null], // told once for each cycle
    ['src/store/nowhere.ts', other('./gone.js'), 'not-found'],
  ];
  const folders =
    'answers checks season settings store dialog desk exchange channels publish sheets page commands'.split(' ');
  const leaves = [...folders.map((folder) => `src/${folder}`), 'shared', 'tests'].map((folder) => `${folder}/leaf.ts`);

  const tree = mkdtempSync(join(tmpdir(), 'queenpost-tree-'));
  afterAll(() => rmSync(tree, { recursive: true }));

  const cruiseResult = z.object({
    summary: z.object({ violations: z.array(z.object({ from: z.string(), rule: z.object({ name: z.string() }) })) }),
  });
  /** `file: rule`, each once. */
  async function violations(folder: string): Promise<string[]> {
    const program = join(root, 'node_modules', 'dependency-cruiser', 'bin', 'dependency-cruise.mjs');
    const config = join(root, 'tests', 'tree', 'dependency-rules.cjs');
    const { stdout } = await promisify(execFile)(
      process.execPath,
      [program, '--config', config, '--output-type', 'json', 'src', 'shared'],
      { cwd: folder, maxBuffer: 100_000_000 },
    );
    const found = cruiseResult.parse(JSON.parse(stdout)).summary.violations;
    return [...new Set(found.map(({ from, rule }) => `${from}: ${rule.name}`))].sort();
  }

  test('every rule bites, and bites nothing else', async () => {
    const files: [string, string][] = [
      ['tsconfig.json', '{"compilerOptions": {"module": "NodeNext"}}'],
      ...leaves.map((file): [string, string] => [file, 'export type A = 1;\n']),
      ...table.map(([file, content]): [string, string] => [file, content]),
    ];
    for (const [file, content] of files) {
      mkdirSync(dirname(join(tree, file)), { recursive: true });
      writeFileSync(join(tree, file), content);
    }
    const expected = table.flatMap(([file, , said]) => (said === null ? [] : [`${file}: ${said}`])).sort();
    expect(await violations(tree)).toEqual(expected);
  });

  test('this program keeps them', async () => {
    expect(await violations(root)).toEqual([]);
  });
});

describe('what the code may say', () => {
  // The text is no file of the project, so the rules that need its types rest; their settings are tested below.
  const eslint = new ESLint({
    cwd: root,
    overrideConfigFile: join(root, 'tests', 'tree', 'eslint.config.js'),
    overrideConfig: tseslint.configs.disableTypeChecked,
  });

  const table: [file: string, content: string, said: string][] = [
    ['src/answers/a.ts', 'export const now = Date.now();', 'no-restricted-properties'],
    ['src/answers/a.ts', 'export const { now } = Date;', 'no-restricted-properties'],
    ['src/dialog/a.ts', 'export const now = new Date();', 'no-restricted-syntax'],
    ['src/dialog/a.ts', "export const day = new Date('2026-05-06');", 'no-restricted-syntax'],
    ['src/dialog/a.ts', 'export const now = Date();', 'no-restricted-syntax'],
    ['src/desk/a.ts', 'export const now = Temporal.Now.instant();', 'no-restricted-properties'],
    ['src/desk/a.ts', 'export const now = performance.now();', 'no-restricted-globals'],
    ['src/checks/a.ts', 'export const one = Math.random();', 'no-restricted-properties'],
    ['src/checks/a.ts', 'export const id = crypto.randomUUID();', 'no-restricted-globals'],
    ['src/checks/a.ts', "import { v7 } from 'uuid';\nexport const id = v7();", 'no-restricted-imports'],
    ['src/season/a.ts', "import { readFileSync } from 'node:fs';\nexport { readFileSync };", 'no-restricted-imports'],
    ['src/season/a.ts', "export { join } from 'path';", 'no-restricted-imports'],
    ['src/season/a.ts', "import type { Kysely } from 'kysely';\nexport type A = Kysely<1>;", 'no-restricted-imports'],
    ['src/sheets/a.ts', 'export const now = Date.now();', 'no-restricted-properties'],
    ['src/season/deep/a.ts', 'console.log(1);', 'no-restricted-globals'],
    ['src/answers/a.ts', 'export const zone = process.env.TZ;', 'no-restricted-globals'],
    ['src/answers/a.ts', 'setTimeout(() => undefined, 1);', 'no-restricted-globals'],
    ['src/answers/a.ts', 'export const one = globalThis.Date;', 'no-restricted-globals'],
    ['src/answers/a.ts', "export const one = await import('zod');", 'no-restricted-syntax'],
    ['src/answers/a.ts', 'export const here = import.meta.url;', 'no-restricted-syntax'],
    ['src/store/a.ts', 'export const one: any = 1;', '@typescript-eslint/no-explicit-any'],
    ['src/store/a.ts', '// @ts-ignore\nexport const one = 1;', '@typescript-eslint/ban-ts-comment'],
    ['src/store/a.ts', 'export const same = (a: number) => a == 1;', 'eqeqeq'],
    ['src/store/a.ts', 'const one = 1;\nexport const two = 2;', '@typescript-eslint/no-unused-vars'],
    ['src/store/a.ts', 'export const two = (one: number) => 2;', '@typescript-eslint/no-unused-vars'],
    ['src/answers/a.ts', '// eslint-disable-next-line no-restricted-globals\nconsole.log(1);', 'no-restricted-globals'],
    ['tests/answers/a.test.ts', "test.skip('one', () => undefined);", 'no-restricted-syntax'],
    ['tests/answers/a.test.ts', "describe.only('one', () => undefined);", 'no-restricted-syntax'],
    // What must pass.
    ['src/store/a.ts', 'export const none = (a: number | null) => a == null;', ''],
    ['src/store/a.ts', 'export const two = (_one: number) => 2;', ''],
    ['src/answers/a.ts', "export const shown = new Intl.NumberFormat('en').format(1);", ''],
    ['src/season/a.ts', 'export const most = Math.max(1, 2);', ''],
    ['src/dialog/a.ts', "import { Temporal } from 'temporal-polyfill';\nexport const day = Temporal.PlainDate;", ''],
    ['src/exchange/a.ts', 'export const now = new Date(Date.now() + Math.random());', ''],
    ['src/channels/a.ts', "import { join } from 'node:path';\nexport { join };\nconsole.log(1);", ''],
    ['tests/answers/a.test.ts', "test('one', () => undefined);", ''],
  ];
  test.each(table)('%s with %j is told "%s"', async (file, content, said) => {
    const [result] = await eslint.lintText(`${content}\n`, { filePath: join(root, file) });
    const rules = (result?.messages ?? [])
      .filter((message) => message.severity === 2)
      .map((message) => message.ruleId ?? message.message);
    expect([...new Set(rules)].join(', ')).toBe(said);
  });

  test('rules that need types are on for every source', async () => {
    const whole = new ESLint({ cwd: root, overrideConfigFile: join(root, 'tests', 'tree', 'eslint.config.js') });
    const settings = z
      .object({ rules: z.record(z.string(), z.array(z.unknown())) })
      .parse(await whole.calculateConfigForFile(join(root, 'src', 'store', 'a.ts')));
    for (const rule of ['no-floating-promises', 'no-unsafe-assignment', 'switch-exhaustiveness-check']) {
      expect(settings.rules[`@typescript-eslint/${rule}`]?.[0], rule).toBe(2);
    }
  });
});
