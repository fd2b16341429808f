/** What one word or phrase says of the sky. */
import type { Cloud } from '../../../shared/vocabularies.js';
import type { Hit } from './phrases.js';

/** How far a word is to be trusted outside an answer about the sky: anywhere, among other weather, or only alone. */
export type Trust = 'anywhere' | 'in-place' | 'alone';

/** What is said of a part of the sky, or of its mood. */
export type SkyPart =
  | 'gloom'
  | 'sun'
  | 'blue'
  | 'bright'
  | 'gaps'
  | 'holes'
  | 'by-turns'
  | 'hidden'
  | 'haze'
  | 'some-cloud'
  | 'few-clouds'
  | 'many-clouds'
  | 'bare-cloud';

export type SkyWord =
  | { readonly says: 'cloud'; readonly cloud: Cloud; readonly trust: Trust }
  | { readonly says: 'part'; readonly part: SkyPart }
  | { readonly says: 'vague'; readonly offer: readonly Cloud[]; readonly rain: boolean }
  | { readonly says: 'rain'; readonly trust: Trust }
  | { readonly says: 'no-rain' | 'nothing' };

export type SkyHit = Hit<SkyWord>;
