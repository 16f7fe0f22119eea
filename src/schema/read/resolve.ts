import { type Finding, ok, type Result, refused } from '../../finding/finding.ts';
import type { LoggingSchema } from '../logging-schema.ts';
import { styleFile } from '../styles/index.ts';
import { changedUnderneath, type LoadParent, readChain } from './chain.ts';
import { complete, EMPTY_DRAFT, type ListOfStyle, over } from './draft.ts';
import type { LoggingFile } from './file-schema.ts';
import type { ReadFile } from './json-source.ts';
import type { TextFile } from './places.ts';
import type { Origins } from './whereabouts.ts';

/** A schema with its inheritance resolved, where each part was written, and what is worth saying about it. */
export type ResolvedSchema = {
  readonly schema: LoggingSchema;
  readonly origins: Origins;
  readonly warnings: readonly Finding[];
};

/**
 * A logging schema with its inheritance resolved. Built-in styles are found by name; other files through `loadParent`.
 * Refused where a file can't be read, a parent is missing, files extend one another in a ring or an entry is not whole;
 * whether the schema is a good one, `checkSchema` says.
 */
export function resolveSchema(
  file: TextFile,
  loadParent: LoadParent = () => undefined,
): Result<ResolvedSchema> {
  const chain = readChain(file, loadParent);
  if (!chain.ok) return chain;
  const findings: Finding[] = [];
  let draft = EMPTY_DRAFT;
  for (const read of [...chain.value].reverse()) {
    const next = over(draft, read, listOfStyle);
    findings.push(...next.findings);
    draft = next.draft;
  }
  const own = chain.value[0] as ReadFile<LoggingFile>;
  const whole = complete(own.value.name, draft);
  if (findings.length > 0 || !whole.ok) return refused(...findings, ...(whole.ok ? [] : whole.findings));
  return ok({ schema: whole.value, origins: draft, warnings: changedUnderneath(chain.value) });
}

/** A list of a built-in style, with the parts that the style starts from. */
const listOfStyle: ListOfStyle = (style, list) => {
  const file = styleFile(style);
  const chain = file === undefined ? undefined : readChain(file, () => undefined);
  if (chain?.ok !== true) return 'no style';
  const draft = chain.value
    .toReversed()
    .reduce((under, read) => over(under, read, listOfStyle).draft, EMPTY_DRAFT);
  return draft.lists.get(list) ?? 'no list';
};
