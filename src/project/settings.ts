import * as z from 'zod';
import { samplingSettings } from '../sampling/settings.ts';
import { shiftSettings } from '../shift/settings.ts';
import { surveySettings } from '../survey/settings.ts';
import { terminationSettings } from '../termination/settings.ts';
import { importSettings } from './import-settings.ts';

const words = z.string().min(1).max(200);

const person = z.strictObject({
  initials: z
    .string()
    .regex(/^[A-Z]{2,4}$/, 'should be two to four capitals')
    .describe('Two to four capitals: how the person signs; two to four capitals'),
  name: words.describe('Name of the person'),
  role: z
    .enum(['geologist', 'field assistant', 'driller', 'offsider', 'camp'])
    .describe('What the person does on the rig; the first geologist signs if no one else is given'),
});

const rig = z.strictObject({
  name: z
    .string()
    .regex(/^[A-Z0-9][A-Z0-9_-]{0,19}$/, 'should be 1 to 20 capitals, digits, _ and -')
    .describe('Name of the rig: capitals, digits, _ and -, at most 20; capitals, digits, _ and -'),
  rodM: z.number().min(1).max(20).describe('Length of a rod, in metres'),
  firstRodOffsetM: z
    .number()
    .min(-10)
    .max(10)
    .describe('Added to rods × length for the drilled depth (stick-up negative), in metres'),
  bitMm: z.number().min(50).max(500).describe('Bit diameter as measured, in millimetres'),
  method: words
    .optional()
    .describe('What it drills by, where that is not RC: diamond for a tail, rotary mud for a pre-collar'),
});

const log = z.strictObject({
  intervalM: z.number().min(0.1).max(10).describe('Usual length of a logged row, in metres'),
  gloves: z.boolean().describe('Refuse single keys: a key more a row, fewer slips'),
});

const hazards = z.strictObject({
  standOffM: z
    .number()
    .min(0)
    .max(200)
    .describe(
      'Warn this far above the earliest depth a hazard zone could come at, in metres; set by the site',
    ),
  cautions: z
    .array(words)
    .describe('Cautions of the site, in its own words, read before the line-up; they replace no induction'),
});

const address = z
  .string()
  .max(254)
  .regex(
    /^(?=[^@]{1,64}@)[A-Za-z0-9_][A-Za-z0-9_+-]*(?:\.[A-Za-z0-9_+-]+)*@(?:[A-Za-z0-9](?:[A-Za-z0-9-]*[A-Za-z0-9])?\.)+[A-Za-z]{2,24}$/,
    'is not a plain mail address, like camp@example.com',
  )
  .describe(
    'A plain mail address: letters, digits and . _ + - in front of the @, no name beside it, no brackets; at most 254 characters; a plain address like camp@example.com',
  );

const camp = z.strictObject({
  to: z.array(address).min(1).max(20).describe('Who a bundle is sent to'),
  cc: z.array(address).max(20).optional().describe('Who gets a copy of it'),
  mailMB: z
    .number()
    .min(0.1)
    .max(24)
    .optional()
    .describe(
      'The largest mail that can be sent, in MB (a million bytes): a larger bundle goes in several; 20 where it is not said',
    ),
});

/** project.json: written by hand, in metres and kilograms. What each part means is said in the room that it belongs to. */
export const projectSettings = z.strictObject({
  $schema: z.string().optional().describe('Where an editor finds the JSON Schema of this file'),
  format: z.literal(1).describe('Format of this file'),
  name: words.describe('Name of the project'),
  company: words.optional().describe('Company that the hole is drilled for'),
  district: words.optional().describe('Where the project is, in words'),
  camp: camp
    .optional()
    .describe('Where the mail drafts of packed bundles go to; without it a person addresses them'),
  people: z.array(person).min(1).describe('People who sign for what they record'),
  rigs: z.array(rig).min(1).describe('Rigs of the project; the first one is meant if none is given'),
  log: log.describe('How rows are logged'),
  hazards: hazards.describe('What the site says about what can hurt someone'),
  sampling: samplingSettings.describe('Bag numbers, controls, recovery, trays, results'),
  survey: surveySettings,
  shift: shiftSettings.describe('Shifts, activities and the contract'),
  import: importSettings
    .optional()
    .describe('How tables of holes that others logged are read: columns, codes, what stands for none'),
  termination: terminationSettings.describe('Rules on ending a hole'),
});
export type ProjectSettings = Readonly<z.infer<typeof projectSettings>>;
