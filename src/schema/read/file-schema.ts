import * as z from 'zod';
import { fieldEntry, label, listEntry, partName, scaleEntry, unlikelyEntry } from './file-entries.ts';

/** A logging schema as it is in `logging.json` or a style: written by hand. */
export const loggingFile = z
  .strictObject({
    $schema: z.string().optional().describe('Where an editor finds the JSON Schema of this file'),
    format: z.literal(1).describe('Version of this file format'),
    name: z
      .string()
      .regex(/^[a-z][a-z0-9-]{0,39}$/, 'should be 1 to 40 small letters, digits and hyphens, a letter first')
      .describe('Name of the schema: 1 to 40 small letters, digits and hyphens, a letter first'),
    label: label.optional(),
    extends: z
      .string()
      .min(1)
      .max(200)
      .optional()
      .describe(
        'What it starts from: the name of a style (orogenic-gold), or another file beside this one (./camp.json)',
      ),
    extendsHash: z
      .string()
      .regex(/^[0-9a-f]{64}$/, 'should be 64 small hex digits')
      .optional()
      .describe(
        'SHA-256, 64 small hex digits, of what it extends as last agreed; the check says when that changes',
      ),
    repeatsBeforeLook: z
      .int()
      .min(2)
      .max(100)
      .optional()
      .describe('Rows alike in a run before the console asks to look again'),
    fields: z
      .array(fieldEntry)
      .max(100)
      .optional()
      .describe('Fields in the order of the log sheet: new, or changed'),
    columns: z
      .array(z.string().min(1).max(30))
      .min(1)
      .max(30)
      .optional()
      .describe(
        'Columns of the log on screen, from the left: names of fields, bag number, sample moisture, sample recovery. Required fields that are not named stand in front. On a narrow screen the last ones named are left out first. Without it the console chooses',
      ),
    unlikely: z
      .array(unlikelyEntry)
      .max(200)
      .optional()
      .describe('What is seldom seen together in one row: asked about, never refused'),
    accepted: z
      .array(
        z.strictObject({
          finding: z.string().min(1).max(80).describe('Its kind'),
          problem: z.string().min(1).max(400).describe('Its words; changed words are said again'),
        }),
      )
      .max(1000)
      .optional()
      .describe('Warnings that the author has looked at and lives with (offsider schema check --accept)'),
    scales: z.record(partName, scaleEntry).optional().describe('Scales by name'),
    lists: z.record(partName, listEntry).optional().describe('Lists of codes by name'),
  })
  .describe(
    'Logging schema: what a project logs, in which words and with which strokes. Beyond this schema: pairs and keys that stand ' +
      'apart, names that are there, conditions that ask fields above (offsider schema check says so).',
  );
export type LoggingFile = z.infer<typeof loggingFile>;
