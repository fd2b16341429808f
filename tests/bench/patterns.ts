/**
 * `npm run bench:patterns`: the readers' regular expressions before `recheck`, which looks for catastrophic
 * backtracking: those written in the sources, and those made of the language's words while answers of the corpus are
 * read. Fails where one is exponential; polynomial ones are listed, and those it cannot decide in time are counted
 * (`npm run bench:hostile` tries all readers on hostile texts).
 */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { check } from 'recheck';
import ts from 'typescript';

const TIMEOUT_MILLISECONDS = 3000;
const LINES_OF_A_KIND = 40;

interface Pattern {
  readonly source: string;
  readonly flags: string;
}
const patterns = new Map<string, Pattern>();
const keep = (source: string, flags: string): void => void patterns.set(`/${source}/${flags}`, { source, flags });

/** Notes each expression that is made from here on. */
function record(): void {
  const { RegExp: Made } = globalThis;
  globalThis.RegExp = new Proxy(Made, {
    construct(target, given: [string | RegExp, string?]) {
      const made = new target(...given);
      keep(made.source, made.flags);
      return made;
    },
  });
}

const filesBelow = (folder: string): string[] =>
  readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesBelow(path) : path.endsWith('.ts') ? [path] : [];
  });

/** Expressions written out in a source. */
function keepWritten(path: string): void {
  const visit = (node: ts.Node): void => {
    const [, source, flags] = ts.isRegularExpressionLiteral(node) ? (/^\/(.*)\/([a-z]*)$/s.exec(node.text) ?? []) : [];
    if (source !== undefined && flags !== undefined) keep(source, flags);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.ES2022, true));
}

record();
// only now, so that what they make on the way in is noted too
const { printed } = await import('../../src/answers/index.js');
const { contextOf } = await import('../answers/corpus/context.js');
const { CORPUS_KINDS, linesOf } = await import('../answers/corpus/lines.js');
for (const kind of CORPUS_KINDS) {
  for (const line of linesOf(kind).slice(0, LINES_OF_A_KIND)) printed(kind, line.text, contextOf(line));
}
for (const folder of ['src/answers', 'src/dialog']) filesBelow(folder).forEach(keepWritten);

const found = { safe: 0, polynomial: 0, exponential: 0, undecided: 0 };
for (const { source, flags } of patterns.values()) {
  const result = await check(source, flags, { timeout: TIMEOUT_MILLISECONDS });
  const kind =
    result.status === 'vulnerable' ? result.complexity.type : result.status === 'safe' ? 'safe' : 'undecided';
  if (kind === 'polynomial' || kind === 'exponential') {
    found[kind] += 1;
    console.log(`${kind}: /${source.slice(0, 150)}${source.length > 150 ? '…' : ''}/${flags}`);
  } else found[kind === 'safe' ? 'safe' : 'undecided'] += 1;
}
console.log(
  `${patterns.size} expressions: ${found.safe} safe, ${found.polynomial} polynomial, ${found.exponential} exponential, ${found.undecided} not decided in ${TIMEOUT_MILLISECONDS / 1000} s.`,
);
process.exit(found.exponential === 0 ? 0 : 1);
