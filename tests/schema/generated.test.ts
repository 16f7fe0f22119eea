import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { FILE_KINDS, jsonSchemaOf } from '../../.ci/file-kinds.ts';
import { generatedFiles } from '../../.ci/generated-files.ts';
import { SMALL } from './build.ts';

const top = resolve(import.meta.dirname, '../..');
const kindNamed = (name: string) => FILE_KINDS.find((kind) => kind.name === name)!;
const validator = (name: string) =>
  new Ajv2020({ strict: false, validateFormats: false }).compile(jsonSchemaOf(kindNamed(name)));

/** Every zod schema inside another, each once, with the path to it. */
function within(schema: z.ZodType): ReadonlyMap<z.ZodType, string> {
  const found = new Map<z.ZodType, string>();
  const walk = (value: unknown, path: string): void => {
    if (typeof value !== 'object' || value === null) return;
    if ('_zod' in value) {
      const each = value as z.ZodType;
      if (found.has(each)) return;
      found.set(each, path);
      // A lazy shape makes a new one each time its getter is called; the one that zod keeps stands in innerType.
      const { def, innerType } = each._zod as unknown as {
        readonly def: object;
        readonly innerType?: unknown;
      };
      const parts = 'getter' in def ? { innerType } : def;
      for (const [name, part] of Object.entries(parts)) walk(part, `${path}.${name}`);
      return;
    }
    for (const [name, part] of Object.entries(value)) walk(part, `${path}.${name}`);
  };
  walk(schema, '');
  return found;
}

/** What the refinements of a schema say when they fail. */
function refinements(schema: z.ZodType): readonly string[] {
  const checks = (schema._zod.def as { readonly checks?: readonly z.core.$ZodCheck[] }).checks ?? [];
  return checks
    .map((check) => check._zod.def as { readonly check: string; readonly error?: unknown })
    .filter((def) => def.check === 'custom')
    .map((def) => (typeof def.error === 'function' ? String(def.error({})) : String(def.error)));
}

/** Members of a JSON Schema that have no description, by their path; a constant speaks for itself. */
function membersWithoutWords(schema: unknown, path = ''): readonly string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const { properties = {} } = schema as { readonly properties?: Readonly<Record<string, object>> };
  const bare = Object.entries(properties)
    .filter(([, member]) => !['description', '$ref', 'const'].some((word) => word in member))
    .map(([name]) => `${path}.${name}`);
  return [
    ...bare,
    ...Object.entries(schema).flatMap(([name, part]) => membersWithoutWords(part, `${path}.${name}`)),
  ];
}

const longWords = (text: string) => new Set(text.toLowerCase().match(/[a-z]{4,}/g) ?? []);

describe('every generated file', () => {
  for (const { path, text } of generatedFiles())
    it(`${path} is as it is generated (npm run generate)`, () => {
      expect(existsSync(join(top, path)) && readFileSync(join(top, path), 'utf8') === text).toBe(true);
    });
});

describe('the JSON Schemas in schemas/', () => {
  for (const kind of FILE_KINDS) {
    it(`${kind.name}: what JSON Schema can't say is said in the description beside it`, () => {
      for (const [schema, path] of within(kind.shape))
        for (const message of refinements(schema)) {
          const description = longWords(z.globalRegistry.get(schema)?.description ?? '');
          const shared = [...longWords(message)].filter((word) => description.has(word));
          expect(shared.length, `${path}: "${message}" is not in its description`).toBeGreaterThan(0);
        }
    });

    it(`${kind.name}: has no transform, default or coercion`, () => {
      const kinds = [...within(kind.shape).keys()].map((schema) => schema._zod.def.type as string);
      for (const never of ['transform', 'pipe', 'default', 'prefault', 'catch', 'codec'])
        expect(kinds).not.toContain(never);
      expect(kinds.length).toBeGreaterThan(20);
    });

    it(`${kind.name}: an independent validator takes it as JSON Schema 2020-12`, () => {
      expect(validator(kind.name)({})).toBe(false);
    });
  }

  for (const name of ['logging', 'project'])
    it(`${name}: says of every member what it is, for the editor that completes it`, () => {
      expect(membersWithoutWords(jsonSchemaOf(kindNamed(name)))).toEqual([]);
    });

  it('finds the refinements that there are', () => {
    const hole = [...within(kindNamed('hole').shape).keys()].flatMap(refinements);
    expect(hole).toContain('must name a code');
  });

  it('take every starter style, and refuse a misspelt member in it', () => {
    const valid = validator('logging');
    const styles = readdirSync(join(top, 'schemas/styles')).filter((name) => name.endsWith('.json'));
    expect(styles).toContain('orogenic-gold.json');
    for (const name of styles) {
      const style = JSON.parse(readFileSync(join(top, 'schemas/styles', name), 'utf8'));
      expect(valid(style), name).toBe(true);
      expect(valid({ ...style, fields: [{ ...style.fields[0], requird: true }] })).toBe(false);
    }
    expect(valid(SMALL)).toBe(true);
  });
});
