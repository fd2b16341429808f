/**
 * Reads a whole watch in one message or mail, in any order. Each field is read by its own reader; greeting, signature
 * and quoted text are passed over; what was not said is absent and nothing is invented.
 */
import type { Ask } from '../../shared/phrases.js';
import type { Count } from '../../shared/record.js';
import { fieldsIn, ownTextOf, type FieldsFound } from './note/fields.js';
import { FIELD_NAMES, type FieldName, type FieldReadings, type FieldValues } from './note/gathering.js';
import type { OwnText } from './note/mail-text.js';
import { noteWords } from './note/vocabulary.js';
import { none, type Context, type Reading, type Span } from './reading.js';
import type { PlantTold } from './plants.js';
import type { TallyRow } from './tally.js';
import { fold, joinSpans } from './text.js';

export { FIELD_NAMES, type FieldName, type FieldReadings, type FieldsFound, type FieldValues };

/** The fields that a message says: those in `asked` by bare values too, all others by their own words only. */
export function readFields(text: string, context: Context, asked: readonly FieldName[]): FieldsFound {
  const own = ownTextOf(text, context);
  if (own) return fieldsIn(own, context, asked, false);
  const [first] = asked;
  return { fields: first === undefined ? {} : { [first]: none('too-long') }, left: text, second: null };
}

/** What a note prints for a field: plants and tally without the words they came from. */
interface Printed extends Omit<FieldValues, 'plants' | 'tally'> {
  plants: { readonly name: string | null; readonly flowers: Count | null }[];
  tally: Omit<TallyRow, 'typed'>[];
}
export type Note = { readonly [Field in FieldName]?: Printed[Field] };
export type NoteOffer = { readonly [Field in FieldName]?: readonly Printed[Field][] };

/** `value` holds the sure fields in any state, `offer` the unsure ones, best first. */
export type NoteReading =
  | {
      readonly state: 'sure';
      readonly value: Note;
      readonly offer: null;
      readonly ask: null;
      readonly used: readonly Span[];
    }
  | {
      readonly state: 'unsure';
      readonly value: Note;
      readonly offer: NoteOffer;
      readonly ask: Ask;
      readonly used: readonly Span[];
    }
  | {
      readonly state: 'none';
      readonly value: null;
      readonly offer: null;
      readonly ask: Ask;
      readonly used: readonly Span[];
    };

/** Words left over in a note of which only a day, a place or a plant's name was read: more of them are a chat. */
const MOST_WORDS_LEFT = 4;

const printed = (field: FieldName, value: unknown): unknown => {
  if (field === 'plants') return (value as readonly PlantTold[]).map(({ name, flowers }) => ({ name, flowers }));
  if (field === 'tally') return (value as readonly TallyRow[]).map(({ typed: _typed, ...row }) => row);
  return value;
};

/** Per field, what a note's own text says; empty where it tells no watch. */
function fieldsOfNote(own: OwnText, context: Context): FieldReadings {
  const { fields, left } = fieldsIn(own, context, [], true);
  const told = FIELD_NAMES.filter((field) => fields[field] !== undefined);
  const noWatch = noteWords(context.words).saysNoWatch(fold(own.text));
  if (noWatch && !told.includes('tally') && !told.includes('times')) return {};
  const { plants } = fields;
  const counted =
    plants?.state === 'unsure' || (plants?.state === 'sure' && plants.value.some(({ flowers }) => flowers !== null));
  const slight = told.every((field) => field === 'date' || field === 'place' || (field === 'plants' && !counted));
  const words = left.match(/[\p{L}\d]+/gu)?.length ?? 0;
  return slight && words > MOST_WORDS_LEFT ? {} : fields;
}

export function readNote(text: string, context: Context): NoteReading {
  const nothing = (ask: Ask): NoteReading => ({ state: 'none', value: null, offer: null, ask, used: [] });
  if (text.trim() === '') return nothing('empty');
  const own = ownTextOf(text, context);
  if (!own) return nothing('too-long');
  const fields = fieldsOfNote(own, context);
  const value: Record<string, unknown> = {};
  const offer: Record<string, unknown> = {};
  const asks: Ask[] = [];
  const used: Span[] = [];
  for (const field of FIELD_NAMES) {
    const reading: Reading<unknown> | undefined = fields[field];
    if (!reading || reading.state === 'none') continue;
    used.push(...reading.used);
    if (reading.state === 'sure') value[field] = printed(field, reading.value);
    else {
      offer[field] = reading.offer.map((each) => printed(field, each));
      asks.push(reading.ask);
    }
  }
  const spans = joinSpans(used);
  if (asks.length > 0) {
    const [only] = asks;
    const twoWatches = asks.includes('two-spans') || asks.includes('note-two-watches');
    const ask = twoWatches ? 'note-two-watches' : asks.length === 1 && only ? only : 'note-some-unsure';
    return { state: 'unsure', value: value, offer: offer, ask, used: spans };
  }
  if (Object.keys(value).length === 0) return nothing('note-nothing-told');
  return { state: 'sure', value: value, offer: null, ask: null, used: spans };
}
