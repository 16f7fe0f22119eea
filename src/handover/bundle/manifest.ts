import * as z from 'zod';

const MOST_FILES = 5000;

const digest = (what: string) =>
  z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .describe(`${what}, 64 digits, 0 to 9 and a to f`);

const packedFile = z.strictObject({
  file: z.string().max(80).describe('Its place in the bundle and in the project'),
  bytes: z
    .int()
    .min(0)
    .max(2 ** 31),
  sha256: digest('Its SHA-256'),
  entries: z
    .int()
    .min(0)
    .max(2 ** 31)
    .optional()
    .describe('Of a document: how many entries its history has'),
  head: digest('Of a document: the hash of the last entry of its history').optional(),
  since: digest('Of an increment: the hash of the entry that it goes on from').optional(),
});

const heldDocument = z.strictObject({
  file: z.string().max(80).describe('Its file in the project'),
  head: digest('The hash of the last entry of its history'),
});

const writtenFile = z.strictObject({
  file: z.string().max(80).describe('Its place in the bundle, where it goes along'),
  path: z
    .string()
    .max(200)
    .describe(
      'Its place in the project: project.json, logging.json, or a file that logging.json starts from',
    ),
  sha256: digest('Its SHA-256'),
});

/** manifest.json of a bundle: where it comes from, and what is in it. */
export const manifestShape = z.strictObject({
  format: z.literal([1, 2]).describe('Format of this file: 2 since it says what the sender holds'),
  kind: z.literal('bundle'),
  project: z.string().min(1).max(200).describe('Name of the project'),
  replica: z.string().max(40).describe('The copy of the project that it was packed in'),
  by: z
    .string()
    .regex(/^[A-Z]{2,4}$/)
    .describe('Two to four capitals: who packed it'),
  at: z.string().max(30).describe('When, by the clock of the computer'),
  files: z.array(packedFile).max(MOST_FILES).describe('Every other file of the bundle, in its order'),
  everything: z
    .boolean()
    .optional()
    .describe(
      'True where nothing was chosen: what the sender holds and is not in it, the receiver has acknowledged',
    ),
  holds: z
    .strictObject({
      documents: z.array(heldDocument).max(MOST_FILES).describe('Every document of the sender'),
      texts: z.array(digest('SHA-256 of a file written by hand that it holds')).max(MOST_FILES),
    })
    .optional()
    .describe('What the copy that it was packed in holds: this acknowledges all that it took in'),
  written: z
    .array(writtenFile)
    .max(20)
    .optional()
    .describe(
      'The sender’s files written by hand, each in the bundle, or held by the receiver under its SHA-256',
    ),
});
export type Manifest = Readonly<z.infer<typeof manifestShape>>;
export type PackedFile = Manifest['files'][number];
