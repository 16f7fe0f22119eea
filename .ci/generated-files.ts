import { catalogueText } from '../src/check/registry.ts';
import { declaredPage } from '../src/handover/tables/contract-page.ts';
import { DECLARED } from '../src/handover/tables/tables.ts';
import { conditionsPage } from '../src/termination/rules/conditions-page.ts';
import { FILE_KINDS, jsonSchemaOf } from './file-kinds.ts';
import { findingExamples } from './finding-examples.ts';
import { EVERY_FINDING_KIND } from './finding-kinds.ts';
import { readmeText } from './readme.ts';

/** A file that is made from the code, by its path from the top of the project. */
export type GeneratedFile = { readonly path: string; readonly text: string };

/** Every generated file as it should stand. A new kind of generated file is added here. */
export function generatedFiles(): readonly GeneratedFile[] {
  const schemas = FILE_KINDS.map((kind) => ({
    path: `schemas/${kind.name}.schema.json`,
    // Shapes that recur without a name of their own get one that a person can read.
    text: `${JSON.stringify(jsonSchemaOf(kind), null, 2).replaceAll('__schema', 'part')}\n`,
  }));
  return [
    ...schemas,
    // The sample project has those of the files that are written by hand, as a new project has.
    ...schemas
      .filter(({ path }) => /(project|logging)\.schema/.test(path))
      .map(({ path, text }) => ({ path: `sample-projects/mulgara-bend/${path}`, text })),
    { path: 'src/check/FINDINGS.md', text: catalogueText(EVERY_FINDING_KIND, findingExamples()) },
    { path: 'src/termination/CONDITIONS.md', text: conditionsPage() },
    { path: 'src/handover/tables/TABLES.md', text: declaredPage(DECLARED) },
    { path: 'README.md', text: readmeText() },
  ];
}
