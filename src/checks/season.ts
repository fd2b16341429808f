/** Is the day one of the survey's season? */
import type { Check } from './check.js';

export const season: Check = {
  name: 'season',
  weights: ['query'],
  check({ date }, _history, { settings }) {
    const { from, to } = settings.season;
    if (date === null || (date >= from && date <= to)) return null;
    return { check: 'season', weight: 'query', values: { date, fromDate: from, toDate: to } };
  },
};
