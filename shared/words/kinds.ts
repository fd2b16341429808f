/** What a section of `words.yaml` is made of. */
import { z } from 'zod';

export const words = z.array(z.string().min(1));
/** A word and the number it stands for. */
export const valued = z.record(z.string(), z.number());
