/** Reads one YAML file through its schema; what is wrong is said with file, line, key and value. */
import { readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { isMap, isPair, isScalar, isSeq, LineCounter, parseDocument, type Document } from 'yaml';
import type { z } from 'zod';
import { SettingsError } from './errors.js';
import { ROOT } from './root.js';

/** The file as people know it: relative to the program's folder where it lies inside, else as given. */
export function fileName(path: string): string {
  const inside = relative(ROOT, path);
  return inside.startsWith('..') ? path : inside;
}

export function readText(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (cause) {
    throw new SettingsError(fileName(path), null, '', 'cannot be read. Does the file exist?', { cause });
  }
}

/** The line of a key or of the nearest part of its path that is in the file. */
function lineOf(document: Document, lines: LineCounter, path: readonly PropertyKey[]): number | null {
  for (let length = path.length; length >= 0; length--) {
    let node: unknown = document.contents;
    let offset: number | undefined;
    let found = true;
    for (const part of path.slice(0, length)) {
      if (isMap(node)) {
        const pair = node.items.find(
          (item) => isPair(item) && isScalar(item.key) && String(item.key.value) === String(part),
        );
        if (!pair) {
          found = false;
          break;
        }
        if (isScalar(pair.key) && pair.key.range) offset = pair.key.range[0];
        node = pair.value;
      } else if (isSeq(node) && typeof part === 'number' && part < node.items.length) {
        node = node.items[part];
        const range = (node as { range?: [number, number, number] }).range;
        if (range) offset = range[0];
      } else {
        found = false;
        break;
      }
    }
    if (found && offset !== undefined) return lines.linePos(offset).line;
  }
  return null;
}

const shown = (value: unknown): string => {
  const text = JSON.stringify(value) ?? 'nothing';
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
};

/** Throws `SettingsError` for the first thing that is wrong. */
export function readYaml<Schema extends z.ZodType>(path: string, schema: Schema): z.infer<Schema> {
  const lines = new LineCounter();
  const document = parseDocument(readText(path), { lineCounter: lines, prettyErrors: false });
  const broken = document.errors[0];
  if (broken) {
    throw new SettingsError(fileName(path), lines.linePos(broken.pos[0]).line, '', `is not YAML: ${broken.message}`);
  }
  const raw: unknown = document.toJS();
  const result = schema.safeParse(raw);
  if (result.success) return result.data;
  const issue = result.error.issues[0]!;
  const extra = issue.code === 'unrecognized_keys' ? issue.keys[0] : undefined;
  const keyPath = extra === undefined ? issue.path : [...issue.path, extra];
  const value = keyPath.reduce<unknown>(
    (node, part) => (node as Record<PropertyKey, unknown> | undefined)?.[part],
    raw,
  );
  const problem = extra === undefined ? `${issue.message} (it is ${shown(value)})` : 'no such key is known here';
  throw new SettingsError(fileName(path), lineOf(document, lines, keyPath), keyPath.join('.'), problem);
}
