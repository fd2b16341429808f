/** What the coordinator and a helper made of rows of queens. */
import type { Change, Determination, Photograph, QueensRow } from '../../../shared/record.js';
import { GENUS, type Fauna } from './bees.js';
import { instantOf, MINUTE_MILLISECONDS } from './calendar.js';
import type { Chance } from './chance.js';
import type { Seen, True } from './tally.js';

export interface Expert {
  readonly key: string;
  readonly role: 'coordinator' | 'helper';
}
export interface Experts {
  readonly coordinator: Expert;
  readonly helper: Expert;
}

export interface Judged {
  readonly rows: QueensRow[];
  readonly photographs: Photograph[];
  readonly changes: Change[];
}

export interface Moments {
  /** Epoch milliseconds. */
  readonly began: number;
  readonly stored: number;
}

const DAY_MILLISECONDS = 24 * 60 * MINUTE_MILLISECONDS;

/** Rows that were doubted or not named at all are sent in more often. */
const sentIn = ({ doubt, bee }: QueensRow): number => (doubt || bee === GENUS ? 0.5 : 0.2);

function photographOf(queensRow: number, began: number, chance: Chance): Photograph {
  return {
    sha256: Array.from({ length: 8 }, () => chance.hex()).join(''),
    type: 'image/jpeg',
    takenAt: chance.yes(0.8) ? instantOf(began + chance.whole(0, 15 * 60) * 1000) : null,
    queensRow,
    licence: chance.yes(0.7) ? 'CC-BY-4.0' : null,
  };
}

/** The name, a pair that cannot be told apart, or nothing that could be told. */
function taxaOf(truly: string, fauna: Fauna, chance: Chance): string[] {
  const how = chance.share();
  const alike = fauna.bees.find(({ name }) => name === truly)?.lookAlikes ?? [];
  if (how < 0.06 && alike.length > 0) return [truly, chance.one(alike)].sort();
  return how < 0.09 ? [] : [truly];
}

/** One determination for each name and caste among the bees that the photographs show. */
function determinationsOf(
  { truly }: Seen,
  from: Determination['from'],
  { key: by, role }: Expert,
  at: string,
  fauna: Fauna,
  chance: Chance,
): Determination[] {
  const shown = chance.yes(0.7) ? truly : truly.slice(0, 1);
  const kinds = new Map<string, True[]>();
  for (const bee of shown) {
    const key = `${bee.name} ${bee.worker}`;
    kinds.set(key, [...(kinds.get(key) ?? []), bee]);
  }
  return [...kinds.values()].map((bees) => ({
    taxa: taxaOf(bees[0]?.name ?? GENUS, fauna, chance),
    qualifier: chance.yes(0.05) ? 'cf.' : null,
    count: bees.length,
    caste: bees[0]?.worker === true ? 'worker' : chance.yes(0.4) ? 'queen' : null,
    by,
    role,
    at,
    from,
  }));
}

export function judge(seen: readonly Seen[], moments: Moments, experts: Experts, fauna: Fauna, chance: Chance): Judged {
  const photographs: Photograph[] = [];
  const changes: Change[] = [];

  const rows = seen.map((one): QueensRow => {
    const { row } = one;
    if (row.seenBefore > 0 || !chance.yes(sentIn(row))) {
      if (chance.yes(0.05)) photographs.push(photographOf(row.row, moments.began, chance));
      return row;
    }
    const from = chance.yes(0.85) ? 'photograph' : 'description';
    if (from === 'photograph') photographs.push(photographOf(row.row, moments.began, chance));
    const determinations: Determination[] = [];
    const add = (expert: Expert, moment: number): void => {
      const at = instantOf(moment);
      for (const determination of determinationsOf(one, from, expert, at, fauna, chance)) {
        const path = `/queens/${row.row - 1}/determinations/${determinations.length}`;
        const { key: by, role } = expert;
        changes.push({ at, by, role, through: 'desk', path, from: null, to: { ...determination }, why: null });
        determinations.push(determination);
      }
    };
    const first = moments.stored + Math.round(chance.between(0.4, 12) * DAY_MILLISECONDS);
    const byHelper = chance.yes(0.3);
    add(byHelper ? experts.helper : experts.coordinator, first);
    if (byHelper && chance.yes(0.2)) {
      add(experts.coordinator, first + Math.round(chance.between(0.1, 5) * DAY_MILLISECONDS));
    }
    return { ...row, determinations };
  });
  return { rows, photographs, changes };
}
