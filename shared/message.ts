/** What goes in and out of a conversation, the same for every channel. */
import { z } from 'zod';
import { receiptSchema } from './receipt.js';
import { instant } from './record.js';

export const contentSchema = z.discriminatedUnion('kind', [
  /** `caption`: the words under a picture, which is the next message. */
  z.strictObject({ kind: z.literal('text'), text: z.string(), caption: z.literal(true).optional() }),
  z.strictObject({
    kind: z.literal('place'),
    latitude: z.number().min(-90).max(90),
    longitude: z.number().min(-180).max(180),
    uncertaintyMetres: z.number().positive().nullable(),
    /** What the place is called where it was sent with a name: a venue's title. */
    words: z.string().optional(),
  }),
  z.strictObject({
    kind: z.literal('photo'),
    sha256: z.string(),
    type: z.string(),
    takenAt: instant.nullable(),
    /** Sent as a picture, which the channel made smaller and freed of its data; as a file it comes as it was taken. */
    compressed: z.literal(true).optional(),
    /** Where it was taken, by its own data: offered, and kept only after a yes. */
    place: z
      .strictObject({
        latitude: z.number().min(-90).max(90),
        longitude: z.number().min(-180).max(180),
        uncertaintyMetres: z.number().positive().nullable(),
      })
      .optional(),
  }),
  /** Anything that is no photograph; it is not kept. `problem` says why a photograph was not taken. */
  z.strictObject({
    kind: z.literal('file'),
    name: z.string(),
    problem: z.enum(['too-big', 'not-fetched', 'not-agreed']).nullable(),
  }),
  /** A button: stands for its words, if the report and revision it was shown with are still current. */
  z.strictObject({ kind: z.literal('pressed'), report: z.string(), revision: z.int(), words: z.string() }),
  /** The conversation was opened and nothing written yet; `survey` where it was by a link that names one. */
  z.strictObject({ kind: z.literal('opened'), survey: z.string().optional() }),
  /** A timer that came due. */
  z.strictObject({ kind: z.literal('time'), key: z.string(), report: z.string() }),
]);

export const messageSchema = z.strictObject({
  survey: z.string(),
  channel: z.string(),
  /** The channel's own id of the person. */
  person: z.string(),
  /** The channel's own id of the message; a second copy changes nothing. */
  id: z.string(),
  /** The sender's time if within seven days before receipt, else receipt. */
  at: instant,
  /**
   * What it is a reply to: the channel's own id of one of our messages, as its sending function gave it, or the id of an
   * earlier message of theirs.
   */
  replyTo: z.string().nullable(),
  /** The id of the earlier message that this one is the new text of. */
  edits: z.string().nullable(),
  /** `one`: a thread asks question by question; `all`: everything still open in one list. */
  manner: z.enum(['one', 'all']),
  /** The channel vouches for who sent it. */
  proven: z.boolean(),
  what: contentSchema,
  /** The same for pictures that were sent together. */
  album: z.string().optional(),
});

/** Where a conversation stands after a reply; printed by `talk --jsonl`. */
export const askingSchema = z.strictObject({ fields: z.array(z.string()), plant: z.string().nullable() });

export const replySchema = z.strictObject({
  text: z.string(),
  /** Buttons a channel may show; typing their words does the same. */
  choices: z.array(z.string()),
  /** No sound: the answer to a tally in a live watch. */
  silent: z.boolean(),
  /** The report it is about and its revision, to tell a stale button. */
  report: z.string().nullable(),
  revision: z.int(),
  /** The stored watch that it is about, by id: so that a reply to it is understood later. */
  watch: z.string().optional(),
  /** Takes the place of the thread's last reply of the same slot, where the channel can change what it sent. */
  slot: z.string().optional(),
  /** The watch's receipt, where this is one; `text` is empty then. */
  receipt: receiptSchema.optional(),
  /** Not kept once it was sent: it went to somebody who asked to be forgotten, or tells what only a yes may keep. */
  erase: z.boolean().optional(),
  /** A file that goes with it, for the person's own eyes. */
  file: z.strictObject({ name: z.string(), text: z.string() }).optional(),
  /**
   * A picture of theirs that is given back to them as it came, by its hash in the data folder; `text` is empty then.
   * `observer` is the key of whose it is.
   */
  picture: z.strictObject({ sha256: z.string(), name: z.string(), observer: z.string() }).optional(),
});

export type Content = z.infer<typeof contentSchema>;
export type Message = z.infer<typeof messageSchema>;
export type Asking = z.infer<typeof askingSchema>;
export type Reply = z.infer<typeof replySchema>;
