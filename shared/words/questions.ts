/** What people ask back, by what it is about; each is answered by the phrase `answer-…` of its name. */
import { z } from 'zod';
import { words } from './kinds.js';

/** In the order in which they are looked for: "who sees my photos, and do you keep them" is about who sees. */
export const QUESTION_TOPICS = [
  'seen',
  'who',
  'kept',
  'effort',
  'late',
  'others',
  'queen',
  'size',
  'sites',
  'needed',
  'safety',
  'unsure',
  'report',
  'watch',
  'example',
] as const;
export type QuestionTopic = (typeof QUESTION_TOPICS)[number];

export const questionWords = z.record(z.enum(QUESTION_TOPICS), words);
