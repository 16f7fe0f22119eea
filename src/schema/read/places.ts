import { findNodeAtLocation, type Node } from 'jsonc-parser';
import { lineAndColumn, type Place } from '../../finding/place.ts';

/** Where something stands in a JSON file: names of members and places in lists, from the top. */
export type JsonPath = readonly (string | number)[];

/** A file written by hand: what it is called in messages, and its text (JSON; comments are allowed). */
export type TextFile = {
  readonly file: string;
  readonly text: string;
  /** Comes with the program: no one can open it, so places in it have no line. */
  readonly builtIn?: true;
};

/** A text file with its tree, so that findings can point into it. */
export type JsonSource = TextFile & { readonly root: Node };

/** The place of a path in a file; of the nearest part above it that is there. A member's place is that of its name. */
export function placeInFile(source: JsonSource, path: JsonPath): Place {
  const node = nearest(source, path);
  const at = node.parent?.type === 'property' ? node.parent.offset : node.offset;
  return { file: source.file, ...(source.builtIn === true ? {} : lineAndColumn(source.text, at)) };
}

/** The text at a path as an excerpt, cut to a line; nothing where the path is not there. */
export function excerptAt(source: JsonSource, path: JsonPath): { readonly excerpt?: string } {
  const node = nearest(source, path);
  const from = node.parent?.type === 'property' ? node.parent.offset : node.offset;
  const text = source.text
    .slice(from, node.offset + node.length)
    .replace(/\s+/g, ' ')
    .trim();
  return { excerpt: text.length > 100 ? `${text.slice(0, 99)}…` : text };
}

function nearest(source: JsonSource, path: JsonPath): Node {
  for (let length = path.length; length > 0; length -= 1) {
    const node = findNodeAtLocation(source.root, path.slice(0, length) as (string | number)[]);
    if (node !== undefined) return node;
  }
  return source.root;
}
