import { expect, test } from 'vitest';
import { depthFromMm } from '../../../src/quantity/depth.ts';
import { checkTrays, compartmentAt, trayChange, trayList } from '../../../src/sampling/trays/trays.ts';
import { sampling } from '../build.ts';

const hole = (toM: number, trays: { tray: number; fromM: number; toM: number; photo?: string }[] = []) => ({
  name: 'ZQRC004',
  startMm: 0,
  isOver: false,
  toMm: toM * 1000,
  trays: trays.map(({ fromM, toM: to, ...rest }) => ({
    ...rest,
    fromMm: depthFromMm(fromM * 1000),
    toMm: depthFromMm(to * 1000),
  })),
});

test('the 46–47 m chips are in tray 3, compartment 7', () => {
  expect(compartmentAt(sampling(), 0, 46_000)).toEqual({
    tray: 3,
    compartment: 7,
    fromMm: 46_000,
    toMm: 47_000,
  });
});

test('trays are counted from the foot of a pre-collar, and above it there is no place', () => {
  expect(compartmentAt(sampling(), 30_000, 30_000)).toMatchObject({ tray: 1, compartment: 1 });
  expect(compartmentAt(sampling(), 30_000, 29_000)).toBeUndefined();
});

test('the change of tray is announced a rod ahead', () => {
  expect(trayChange(sampling(), 0, 15_000, 6000)).toEqual({ tray: 2, inMm: 5000 });
  expect(trayChange(sampling(), 0, 12_000, 6000)).toBeUndefined();
  expect(trayChange(sampling(), 0, 20_000, 6000)).toBeUndefined();
});

test('the list gives each tray its metres and label, the last one cut at the depth reached', () => {
  expect(trayList(sampling(), hole(45)).map((tray) => tray.label)).toEqual([
    'ZQRC004 tray 1 0–20 m',
    'ZQRC004 tray 2 20–40 m',
    'ZQRC004 tray 3 40–45 m',
  ]);
  expect(trayList(sampling(), hole(0))).toEqual([]);
});

test('a full tray without a photograph is found, one that is still filled is not', () => {
  const found = checkTrays(sampling(), hole(45, [{ tray: 1, fromM: 0, toM: 20, photo: 'ZQRC004_1.jpg' }]));
  expect(found.map((each) => [each.code, each.place.thing])).toEqual([['tray-without-photo', 'tray 2']]);
});

test('the last tray of a hole that is over wants one too, however few chips are in it', () => {
  const missing = (isOver: boolean) =>
    checkTrays(sampling(), { ...hole(45), isOver }).map((each) => each.place.thing);
  expect(missing(false)).toEqual(['tray 1', 'tray 2']);
  expect(missing(true)).toEqual(['tray 1', 'tray 2', 'tray 3']);
});

test('a tray recorded with other metres than its own is found', () => {
  const found = checkTrays(sampling(), hole(45, [{ tray: 1, fromM: 0, toM: 21, photo: 'ZQRC004_1.jpg' }]));
  expect(found.map((each) => each.code)).toContain('tray-metres-differ');
});
