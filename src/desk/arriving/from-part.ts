import { inflateExactly } from '../../files/inflate.ts';
import { holdToShape } from '../../files/json-shape.ts';
import { OTHER_LIMITS, readJsonText } from '../../files/read-json.ts';
import { ok, type Result, refused } from '../../finding/finding.ts';
import { otherProject } from '../../handover/bundle/open-bundle.ts';
import { openPart, type PartHeader, partFaults, partShape } from '../../handover/bundle/parts.ts';
import type { Arrival, Home } from './arrival.ts';

/** A part of a bundle, held to what it says of itself. Nothing of it is taken in before all parts are there. */
export function fromPart(bytes: Uint8Array, file: string, home: Pick<Home, 'project'>): Result<Arrival> {
  const opened = openPart(bytes, file, inflateExactly);
  if (!opened.ok) return opened;
  const json = readJsonText(opened.value.header, `${file}/part.json`, OTHER_LIMITS);
  const held = json.ok ? holdToShape<PartHeader>(json.value, partShape as never) : json;
  if (!held.ok) return held;
  const part = { header: held.value, bytes: opened.value.bytes };
  const faults = partFaults(part, opened.value.dosTime, file);
  if (faults.length > 0) return refused(...faults);
  const other = otherProject(held.value, home.project, file);
  if (other !== undefined) return refused(other);
  return ok({ documents: [], left: [], parts: [{ ...part, from: file, archive: bytes }] });
}
