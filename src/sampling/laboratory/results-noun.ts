import * as z from 'zod';
import { HOLE_NOUNS } from '../../hole/hole.ts';
import { stamp, words } from '../../hole/parts.ts';
import type { Document } from '../../record/document.ts';
import { own } from '../../record/json.ts';

/** A certificate of the laboratory as taken in: table `certificate`, one thing `certificate`. */
const certificate = z.strictObject({
  certificate: words.describe("The laboratory's number of it"),
  file: words.describe('Name of the file it came in'),
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .describe('SHA-256 of that file, hex'),
  takenInAt: stamp,
  takenInBy: words,
  supersedes: words
    .optional()
    .describe('Id of the certificate that it was issued again for; that one stays and no longer counts'),
  columns: z
    .array(z.strictObject({ column: words, analyte: words, unit: words }))
    .min(1)
    .describe('How its columns were read: the mapping of project.json on that day'),
});
type CertificateHeader = Readonly<z.infer<typeof certificate>>;

/** The line of one sample: table `lines`. What the laboratory wrote stands as it wrote it, `<0.01` too. */
const line = z.strictObject({
  line: z.int().min(1).max(10_000_000).describe('Line of the file, from 1'),
  number: words.describe('Number of the sample'),
  reported: z.record(words, words).describe('What is reported of each column, as written'),
});
export type ReportedLine = Readonly<z.infer<typeof line>>;

/** What is in each table of returned results. */
export const RESULTS_NOUNS = {
  certificate,
  lines: line,
  questions: HOLE_NOUNS.questions,
  accepted: HOLE_NOUNS.accepted,
} as const;

/** A certificate as it is read: its lines in the order of the file, which is the order that the laboratory worked in. */
export interface Certificate extends CertificateHeader {
  readonly id: string;
  readonly lines: readonly ReportedLine[];
}

/** The certificate that a document of results holds. Throws where it has no header: reading a file refuses such a one. */
export function certificateOf(document: Document): Certificate {
  const found = own(own(document.tables, 'certificate'), 'certificate') as CertificateHeader | undefined;
  if (found === undefined) throw new Error(`results ${document.id} have no certificate`);
  const lines = Object.values(own(document.tables, 'lines') ?? {}) as unknown as readonly ReportedLine[];
  return { ...found, id: document.id, lines: [...lines].sort((a, b) => a.line - b.line) };
}

/** Certificates that count, in the order they were taken in: those that no other supersedes. */
export function counting(certificates: readonly Certificate[]): readonly Certificate[] {
  const superseded = new Set(certificates.flatMap((each) => each.supersedes ?? []));
  return certificates
    .filter((each) => !superseded.has(each.id))
    .sort((a, b) =>
      a.takenInAt === b.takenInAt ? (a.id < b.id ? -1 : 1) : a.takenInAt < b.takenInAt ? -1 : 1,
    );
}
