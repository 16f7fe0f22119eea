import type { Metafile } from 'esbuild';

export const LICENCES: string;
export const BILL: string;
export function packagesIn(metafile: Metafile): readonly string[];
export function licencesText(top: string, places: readonly string[]): string;
export function billOfMaterials(top: string, bundled: readonly string[]): string;
