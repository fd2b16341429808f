/**
 * Lets Node run the sources as they are: `node --import ./tests/run-typescript.mjs FILE.ts`. For tests that need a
 * program of their own to kill, and for benchmarks. Types are dropped, not checked.
 */
import { existsSync, readFileSync } from 'node:fs';
import { register } from 'node:module';
import { fileURLToPath } from 'node:url';
import { isMainThread } from 'node:worker_threads';
import ts from 'typescript';

if (isMainThread) register(import.meta.url);

/** `./leaf.js` is `leaf.ts` where there is no such `.js`. */
export async function resolve(specifier, context, next) {
  if (specifier.startsWith('.') && specifier.endsWith('.js') && context.parentURL?.startsWith('file:')) {
    const script = new URL(specifier, context.parentURL);
    if (!existsSync(script)) return next(specifier.replace(/\.js$/, '.ts'), context);
  }
  return next(specifier, context);
}

export async function load(url, context, next) {
  if (!url.startsWith('file:') || !url.endsWith('.ts')) return next(url, context);
  const { outputText } = ts.transpileModule(readFileSync(fileURLToPath(url), 'utf8'), {
    compilerOptions: { module: ts.ModuleKind.ESNext, target: ts.ScriptTarget.ES2022, verbatimModuleSyntax: true },
    fileName: fileURLToPath(url),
  });
  return { format: 'module', source: outputText, shortCircuit: true };
}
