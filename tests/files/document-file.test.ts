import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { documentFault, readDocumentFile, type StoredDocument } from '../../src/files/document-file.ts';
import { documentBytes, printAhead } from '../../src/files/print-document.ts';
import { DOCUMENT_LIMITS, readJsonText } from '../../src/files/read-json.ts';
import { formatFinding } from '../../src/finding/finding.ts';
import { apply } from '../../src/record/apply.ts';
import { emptyDocument } from '../../src/record/document.ts';
import { HOLE, holeMade, rowLogged } from '../desk/support/values.ts';

const deed = { edit: 'k3f9qx-1', at: '2026-03-14T08:00:00+08:00', by: 'Ana Reyes', what: 'hole made' };

function stored(rows = 2): StoredDocument {
  const changes = [
    ...holeMade(),
    ...Array.from({ length: rows }, (_, row) => rowLogged(`k3f9qx-${row + 2}`, row)),
  ];
  const made = apply(emptyDocument(HOLE), deed, changes);
  if (!made.ok) throw new Error(made.problem);
  return { document: made.document, position: { generation: 3, sequence: 41 } };
}

const printDocument = (of: StoredDocument) => new TextDecoder().decode(documentBytes(of));

const read = (text: string, name = HOLE) => {
  const json = readJsonText(new TextEncoder().encode(text), 'holes/ZQRC001.json', DOCUMENT_LIMITS);
  if (!json.ok) throw new Error(json.findings[0]?.problem);
  return readDocumentFile(json.value, name);
};

const findings = (text: string): readonly string[] => {
  const result = read(text);
  return result.ok ? [] : result.findings.map(formatFinding);
};

describe('a hole file', () => {
  it('reads back as what was printed', () => {
    const result = read(printDocument(stored()));
    expect(result.ok && result.value).toEqual(stored());
  });

  it('prints the same document to the same bytes, read back or not', () => {
    fc.assert(
      fc.property(fc.nat(6), fc.string(), (rows, remark) => {
        const { document, position } = stored(rows + 1);
        const said = apply(document, { ...deed, edit: 'k3f9qx-99' }, [
          { patch: ['rows', 'k3f9qx-2'], set: { remark: `a${remark}` } },
        ]);
        if (!said.ok) throw new Error(said.problem);
        const text = printDocument({ document: said.document, position });
        const back = read(text);
        expect(back.ok && printDocument(back.value)).toBe(text);
      }),
    );
  });

  it('of a long hole is printed a little at a time, other work in between, and is the same', async () => {
    const long = stored(400);
    let turns = 0;
    let isOver = false;
    const count = (): void => {
      turns += 1;
      if (!isOver) setImmediate(count);
    };
    setImmediate(count);
    await printAhead(long.document);
    isOver = true;
    expect(turns).toBeGreaterThan(4);
    expect(printDocument(long)).toBe(printDocument(stored(400)));
  });

  it('with nothing in it is still a file', () => {
    const text = printDocument({ document: emptyDocument(HOLE), position: { generation: 0, sequence: 0 } });
    expect(read(text).ok).toBe(true);
  });

  it.each([
    ['"toMm": 1000,', '"toMm": 1000.5,', 12, 'rows.k3f9qx-2.toMm'],
    ['"state": "drilling"', '"state": "resting"', 9, 'hole.hole.state'],
    ['"intervalMm": 1000', '"intervalMM": 1000', 9, 'hole.hole.intervalMm'],
  ])('that says %s for %s is refused at its line', (_, wrong, line, field) => {
    const text = printDocument(stored()).replace(_, wrong);
    const [first = ''] = findings(text);
    expect(first).toMatch(new RegExp(`^holes/ZQRC001\\.json:${line}:\\d+, field tables\\.${field}`));
    expect(first).toContain('Nothing was changed.');
  });

  it.each([
    [
      'without its header',
      (text: string) => text.replace(/ {4}"hole": \{\n.*\n {4}\},\n/, ''),
      'hole.hole is missing',
    ],
    ['with a table that a hole has not', (text: string) => text.replace('"rows": {', '"lunch": {'), 'lunch'],
    [
      'with a member of its own',
      (text: string) => text.replace('"format": 1,', '"format": 1, "extra": 2,'),
      'extra',
    ],
    ['without a format', (text: string) => text.replace('  "format": 1,\n', ''), 'format'],
    [
      'with a negative place in the journal',
      (text: string) => text.replace('"sequence": 41', '"sequence": -1'),
      'sequence',
    ],
    ['with an entry that has no hash', (text: string) => text.replace(/, "hash": "[0-9a-f]+"/, ''), 'hash'],
  ])('%s is refused', (_, spoil, word) => {
    const spoiled = spoil(printDocument(stored()));
    expect(spoiled).not.toBe(printDocument(stored()));
    expect(findings(spoiled).join('\n')).toContain(word);
  });

  it('tells at most twenty misfits', () => {
    const text = printDocument(stored(40)).replaceAll('"percent": 2', '"percent": 200');
    expect(findings(text)).toHaveLength(20);
  });
});

describe('what an edit left', () => {
  it('has no fault where it reads back', () => {
    expect(documentFault(stored().document, [['rows', 'k3f9qx-2']])).toBeUndefined();
    expect(documentFault(emptyDocument(HOLE), [])).toBeUndefined();
  });

  it('has one where no one keeps such documents', () => {
    expect(documentFault(emptyDocument({ kind: 'lunch', id: 'A' }), [])).toBe(
      'no files are kept for documents of kind lunch',
    );
  });
});
