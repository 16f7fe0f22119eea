import * as z from 'zod';

const MOST_FILES = 5000;

const packedFile = z.strictObject({
  file: z.string().max(80).describe('Its place in the bundle and in the project'),
  bytes: z
    .int()
    .min(0)
    .max(2 ** 31),
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .describe('64 digits of its SHA-256, 0 to 9 and a to f'),
  entries: z
    .int()
    .min(0)
    .max(2 ** 31)
    .optional()
    .describe('Of a document: how many entries its history has'),
  head: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .optional()
    .describe('Of a document: the hash of the last entry of its history, 64 digits, 0 to 9 and a to f'),
});

/** manifest.json of a bundle: where it comes from, and what is in it. */
export const manifestShape = z.strictObject({
  format: z.literal(1).describe('Format of this file'),
  kind: z.literal('bundle'),
  project: z.string().min(1).max(200).describe('Name of the project'),
  replica: z.string().max(40).describe('The copy of the project that it was packed in'),
  by: z
    .string()
    .regex(/^[A-Z]{2,4}$/)
    .describe('Two to four capitals: who packed it'),
  at: z.string().max(30).describe('When, by the clock of the computer'),
  files: z.array(packedFile).max(MOST_FILES).describe('Every other file of the bundle, in its order'),
});
export type Manifest = Readonly<z.infer<typeof manifestShape>>;
export type PackedFile = Manifest['files'][number];
