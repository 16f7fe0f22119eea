import type { JsonPath } from '../schema/read/places.ts';

/**
 * Where in a text that is JSON the value at a path stands, or the nearest value around it that is there. Walks the text along the path alone and
 * builds no tree: of a large file that is all there is time for.
 */
export function offsetOf(text: string, path: JsonPath): number {
  let at = pastSpace(text, 0);
  for (const step of path) {
    const next = memberAt(text, at, step);
    if (next === undefined) return at;
    at = next;
  }
  return at;
}

/** The offset of a member's value in the object or list that begins at an offset; undefined where it has none of that name. */
function memberAt(text: string, start: number, step: string | number): number | undefined {
  const isObject = text[start] === '{';
  if (!isObject && text[start] !== '[') return undefined;
  let at = pastSpace(text, start + 1);
  for (let index = 0; at < text.length && text[at] !== '}' && text[at] !== ']'; index += 1) {
    let name: unknown = index;
    if (isObject) {
      const end = pastString(text, at);
      name = JSON.parse(text.slice(at, end));
      // The colon.
      at = pastSpace(text, pastSpace(text, end) + 1);
    }
    if (name === (isObject ? String(step) : step)) return at;
    at = pastSpace(text, pastValue(text, at));
    if (text[at] === ',') at = pastSpace(text, at + 1);
  }
  return undefined;
}

function pastSpace(text: string, from: number): number {
  let at = from;
  while (at < text.length && text.charCodeAt(at) <= 0x20) at += 1;
  return at;
}

function pastString(text: string, start: number): number {
  let at = start + 1;
  while (at < text.length && text[at] !== '"') at += text[at] === '\\' ? 2 : 1;
  return at + 1;
}

/** The offset after a value, its members and all. */
function pastValue(text: string, start: number): number {
  let depth = 0;
  for (let at = start; at < text.length; ) {
    const character = text.charCodeAt(at);
    if (character === 0x22) at = pastString(text, at);
    else {
      if (character === 0x7b || character === 0x5b) depth += 1;
      else if (character === 0x7d || character === 0x5d) {
        if (depth === 0) return at;
        depth -= 1;
      } else if (character === 0x2c && depth === 0) return at;
      at += 1;
    }
  }
  return text.length;
}
