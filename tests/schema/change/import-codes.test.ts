import { describe, expect, it } from 'vitest';
import { formatFinding } from '../../../src/finding/finding.ts';
import { importCodes } from '../../../src/schema/change/import-codes.ts';

const columns = { code: 'Code', label: 'Description' };
const read = (text: string, more: object = {}) =>
  importCodes({ file: 'codes.csv', text }, { ...columns, ...more });

function problems(text: string, more: object = {}): readonly string[] {
  const result = read(text, more);
  return result.ok ? [] : result.findings.map((finding) => formatFinding(finding).split('\n')[0] ?? '');
}

describe('a code library from a CSV', () => {
  it('keeps its codes and their order, whatever they look like', () => {
    const result = read('Code,Description\n3b,"Basalt, pillowed"\nMb/2,Basalt\n"O\'K",Other\n');
    expect(result.ok && result.value).toEqual([
      { code: '3b', label: 'Basalt, pillowed', look: '' },
      { code: 'Mb/2', label: 'Basalt', look: '' },
      { code: "O'K", label: 'Other', look: '' },
    ]);
  });

  it('takes what else the mapping names, and leaves out what a line has not', () => {
    const text = '\ufeffDescription,SG,Code,CGI\r\nbasalt,2.9,B,basalt\r\nvein,,V,\r\n';
    const result = read(text, { densityGcm3: 'SG', cgi: 'CGI' });
    expect(result.ok && result.value).toEqual([
      { code: 'B', label: 'basalt', look: '', cgi: 'basalt', densityGcm3: 2.9 },
      { code: 'V', label: 'vein', look: '' },
    ]);
  });

  it('names every bad line, and then takes nothing', () => {
    const text = 'Code,Description,SG\nA,first,2\n,second,2\nC,,2\na,fourth,2\nE,fifth,29\n';
    expect(problems(text, { densityGcm3: 'SG' })).toEqual([
      'codes.csv:3: the code is empty',
      'codes.csv:4: C has no words',
      'codes.csv:5: the code a is there twice',
      'codes.csv:6: E has the density 29; it goes from 0.5 to 8 g/cm³',
    ]);
  });

  it('names a column that is not there, and those that are', () => {
    expect(problems('Kode,Description\nA,b\n')).toEqual([
      'codes.csv:1: no column is called "Code" (for code)',
    ]);
    expect(problems('')).toHaveLength(2);
  });

  it('says where it stops being CSV', () => {
    expect(problems('Code,Description\nA,"open\nB,b\n')[0]).toMatch(/^codes\.csv:\d+: not readable as CSV/);
  });
});
