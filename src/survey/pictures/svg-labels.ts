import type { PicturePoint } from './picture.ts';

/** Words beside a point of a picture, in pixels. */
export interface Label {
  readonly at: PicturePoint;
  readonly words: string;
}

/** Where a label's words are written: their left end at the base line. */
export interface PlacedLabel extends Label {
  readonly x: number;
  readonly y: number;
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Height of a line of words and width of a character, pixels, as parts of the lettering: wide enough for any face. */
const CHARACTER = 0.6;
const GAP = 6;
/** How many lines up or down a label is moved to find room. */
const FURTHEST = 8;

/**
 * Places labels one after another so that none lies on another and all are inside the frame: beside their point, right or left, above or
 * below, further off where there is no room. One that finds none is where it would stand alone.
 */
export function placeLabels(
  labels: readonly Label[],
  frame: { readonly width: number; readonly height: number },
  lettering: number,
): readonly PlacedLabel[] {
  const taken: Box[] = [];
  return labels.map((label) => {
    const wide = label.words.length * lettering * CHARACTER;
    const places = candidates(label.at, wide, lettering);
    const free = places.find(({ x, y }) => {
      const box = boxOf(x, y, wide, lettering);
      return inside(box, frame) && !taken.some((other) => overlap(box, other));
    });
    const { x, y } = free ?? places[0]!;
    taken.push(boxOf(x, y, wide, lettering));
    return { ...label, x, y };
  });
}

function candidates({ x, y }: PicturePoint, wide: number, lettering: number): readonly PicturePoint[] {
  return Array.from({ length: FURTHEST }, (_, lines) => [
    { x: x + GAP, y: y - GAP + 1 - lines * lettering },
    { x: x - GAP - wide, y: y - GAP + 1 - lines * lettering },
    { x: x + GAP, y: y + lettering + lines * lettering },
    { x: x - GAP - wide, y: y + lettering + lines * lettering },
  ]).flat();
}

function boxOf(x: number, y: number, wide: number, lettering: number): Box {
  return { left: x, right: x + wide, top: y - lettering, bottom: y + 2 };
}

function inside(box: Box, { width, height }: { readonly width: number; readonly height: number }): boolean {
  return box.left >= 0 && box.right <= width && box.top >= 0 && box.bottom <= height;
}

function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}
