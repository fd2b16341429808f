/** Reads one YAML file through its schema; what is wrong is said with file, line, key and value. */
import { readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { constructFromEvents, EVENT_ID, getScalarValue, parseEvents, YAMLException, type Event } from 'js-yaml';
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

const lineAt = (text: string, offset: number): number => text.slice(0, offset).split('\n').length;

/** The index behind a node: a map or a list ends with an event of its own. */
function behind(events: readonly Event[], at: number): number {
  let open = 0;
  for (let index = at; index < events.length; index++) {
    const { type } = events[index]!;
    if (type === EVENT_ID.MAPPING || type === EVENT_ID.SEQUENCE) open++;
    else if (type === EVENT_ID.POP) open--;
    if (open === 0) return index + 1;
  }
  return events.length;
}

/** Where the nodes directly inside a map (key, value, key, value …) or a list begin. */
function inside(events: readonly Event[], at: number): number[] {
  const nodes: number[] = [];
  for (let index = at + 1; events[index] && events[index]!.type !== EVENT_ID.POP; index = behind(events, index)) {
    nodes.push(index);
  }
  return nodes;
}

/** Where a node begins in the text. */
function offsetOf(event: Event | undefined): number | null {
  if (event === undefined) return null;
  if (event.type === EVENT_ID.SCALAR) return event.valueStart;
  if (event.type === EVENT_ID.MAPPING || event.type === EVENT_ID.SEQUENCE) return event.start;
  return event.type === EVENT_ID.ALIAS ? event.anchorStart : null;
}

/** The line of a key, or of the nearest part of its path that is in the file. */
function lineOf(text: string, events: readonly Event[], path: readonly PropertyKey[]): number | null {
  let at = 1; // behind the event that begins the document
  let offset: number | null = null;
  for (const part of path) {
    const nodes = inside(events, at);
    const isPart = (node: number): boolean => {
      const key = events[node]!;
      return key.type === EVENT_ID.SCALAR && getScalarValue(text, key) === String(part);
    };
    const isMap = events[at]?.type === EVENT_ID.MAPPING;
    const found = isMap ? nodes.find((node, index) => index % 2 === 0 && isPart(node)) : nodes[Number(part)];
    if (found === undefined) break;
    offset = offsetOf(events[found]) ?? offset;
    at = isMap ? found + 1 : found;
  }
  return offset === null ? null : lineAt(text, offset);
}

const shown = (value: unknown): string => {
  const text = JSON.stringify(value) ?? 'nothing';
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
};

interface Parsed {
  readonly raw: unknown;
  readonly events: readonly Event[];
}

function parse(path: string, text: string): Parsed {
  const broken = (line: number | null, problem: string, options?: ErrorOptions): SettingsError =>
    new SettingsError(fileName(path), line, '', `is not YAML: ${problem}`, options);
  let documents: unknown[];
  let events: Event[];
  try {
    events = parseEvents(text, {});
    documents = constructFromEvents(events, { source: text });
  } catch (cause) {
    if (!(cause instanceof YAMLException)) throw broken(null, (cause as Error).message, { cause });
    throw broken(cause.mark ? cause.mark.line + 1 : null, cause.reason, { cause });
  }
  if (documents.length > 1) throw broken(null, 'it has more than one document');
  return { raw: documents[0], events };
}

/** Throws `SettingsError` for the first thing that is wrong. */
export function readYaml<Schema extends z.ZodType>(path: string, schema: Schema): z.infer<Schema> {
  const text = readText(path);
  const { raw, events } = parse(path, text);
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
  throw new SettingsError(fileName(path), lineOf(text, events, keyPath), keyPath.join('.'), problem);
}
