/**
 * All that the report page says: the shape of `dialogs/LANGUAGE/report.yaml`, with what each sentence is given to fill
 * in. A sentence that names anything else is refused when the file is loaded, not when the report is written.
 */
import { IntlMessageFormat } from 'intl-messageformat';
import { z } from 'zod';
import { COUNTING_UNITS } from './vocabularies.js';

/** The parser's number for plain text, the one kind of element whose value is no name. */
const LITERAL = 0;

type Elements = ReturnType<IntlMessageFormat['getAst']>;

/** What the sentence wants to be given, its plurals and choices gone through. Plain text is told by its type. */
const namesIn = (elements: Elements): string[] =>
  elements.flatMap((element) => [
    ...('value' in element && Number(element.type) !== LITERAL ? [element.value] : []),
    ...('options' in element ? Object.values(element.options).flatMap(({ value }) => namesIn(value)) : []),
  ]);

/** A sentence that may name these, and need not. */
const sentence = (...given: readonly string[]) =>
  z
    .string()
    .min(1)
    .superRefine((text, context) => {
      let names: string[];
      try {
        names = namesIn(new IntlMessageFormat(text, 'en', undefined, { ignoreTag: true }).getAst());
      } catch (cause) {
        context.addIssue(`is no ICU message: ${(cause as Error).message}`);
        return;
      }
      const unknown = names.find((name) => !given.includes(name));
      if (unknown !== undefined)
        context.addIssue(`names {${unknown}}; known here: ${given.length === 0 ? 'nothing' : given.join(', ')}`);
    });

const words = sentence();

/** What each section says; `small` where there is little to go by. */
const section = ({
  shows = [],
  computed = [],
  small,
}: {
  shows?: readonly string[];
  computed?: readonly string[];
  small: readonly string[];
}) => ({
  title: words,
  /** One sentence: what it shows. */
  shows: sentence(...shows),
  /** One sentence: what it does not show. */
  limits: words,
  computed: sentence(...computed),
  small: sentence(...small),
});

export const reportWordingSchema = z.strictObject({
  page: z.strictObject({
    title: sentence('survey'),
    /** `from` is `none` without a watch. */
    lead: sentence('from', 'to', 'observers', 'watches', 'minutes', 'within', 'zero'),
    terms: words,
    small: sentence('observers'),
    numbers: sentence('part'),
    computed: words,
    contents: words,
    close: sentence('citation', 'licence'),
  }),
  missing: z.strictObject({ figure: words, interval: words, none: words, section: words }),
  names: z.strictObject({
    allBees: words,
    genus: words,
    unnamedPlant: words,
    /** In the plural. */
    units: z.record(z.enum(COUNTING_UNITS), words),
  }),
  columns: z.strictObject({
    bee: words,
    plant: words,
    unit: words,
    queens: words,
    visits: words,
    watches: words,
    minutes: words,
    week: words,
    rate: words,
    interval: words,
    alike: words,
  }),
  sections: z.strictObject({
    where: z.strictObject({
      ...section({
        shows: ['cells', 'watches'],
        computed: ['cell', 'high', 'wide', 'unplaced'],
        small: ['most', 'watches'],
      }),
      map: words,
      north: sentence('degrees'),
      south: sentence('degrees'),
      east: sentence('degrees'),
      west: sentence('degrees'),
      columns: z.strictObject({ cell: words }),
      others: sentence('cells'),
    }),
    when: z.strictObject({
      ...section({ small: ['weeks'] }),
      weeks: words,
      hours: words,
      within: words,
      outside: words,
      columns: z.strictObject({ within: words, hour: words }),
    }),
    table: z.strictObject({ ...section({ small: ['visits'] }), part: words }),
    rates: z.strictObject({
      ...section({ shows: ['total', 'interval'], computed: ['headline', 'alike'], small: ['bees'] }),
      part: words,
      reached: sentence('least', 'most'),
    }),
    perFlowers: z.strictObject({
      ...section({ computed: ['most'], small: ['plants'] }),
      part: sentence('unit'),
      bees: words,
      measure: words,
      columns: z.strictObject({ exposure: words, rate: words, alike: words }),
    }),
    weeks: z.strictObject({ ...section({ small: ['weeks'] }), part: words }),
    preference: z.strictObject({
      ...section({ computed: ['least', 'most', 'hidden'], small: ['bees', 'least'] }),
      others: words,
      measure: words,
      columns: z.strictObject({ seen: words, expected: words, ratio: words }),
    }),
    accumulation: z.strictObject({
      /** `richness` is `none` where nothing can be said. */
      ...section({ shows: ['richness', 'estimate', 'se'], small: ['watches'] }),
      part: words,
      columns: z.strictObject({ expected: words }),
    }),
    names: z.strictObject({
      ...section({ shows: ['reported', 'determined', 'agree'], small: ['determined'] }),
      part: words,
      columns: z.strictObject({ counted: words, corrected: words }),
    }),
    doubts: z.strictObject({
      ...section({ small: ['within'] }),
      checks: z.strictObject({
        part: words,
        columns: z.strictObject({ check: words, asked: words, answered: words, open: words }),
        /** By the name of the check. */
        names: z.record(z.string(), words),
        other: words,
        wind: words,
        untold: words,
        outside: words,
      }),
      counted: z.strictObject({
        part: words,
        columns: z.strictObject({ what: words, number: words }),
        byObserver: words,
        doubted: words,
        genus: words,
        unconfirmed: sentence('queens'),
        setAside: words,
        practice: words,
        workers: words,
      }),
      weight: z.strictObject({
        part: words,
        matters: sentence('bees', 'list'),
        all: words,
        within: words,
        byBee: words,
        columns: z.strictObject({ figure: words, all: words, within: words, unconfirmed: words, determined: words }),
        watches: words,
        total: words,
        kinds: words,
        shannon: words,
      }),
    }),
  }),
});

export type ReportWording = z.infer<typeof reportWordingSchema>;
