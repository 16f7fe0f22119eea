import { describe, expect, it } from 'vitest';
import { addCodes, addProvisionalCode } from '../../../src/schema/change/add-code.ts';
import { checkSchema } from '../../../src/schema/check/check-schema.ts';

const TEXT = `{
  // ours
  "format": 1,
  "name": "ours",
  "extends": "orogenic-gold",
  "lists": {
    "rocks": {
      "codes": [
        // agreed in March
        { "code": "DUN", "label": "dunite", "look": "green, sugary" } // ask
      ]
    }
  }
}
`;
const file = (text: string) => ({ file: 'logging.json', text });
const entry = { code: 'PYX', label: 'pyroxenite', look: 'dark, coarse' };

describe('a code added on the rig', () => {
  it('stands in logging.json, marked provisional, with comments and the rest as they were', () => {
    const added = addProvisionalCode(file(TEXT), 'rocks', entry);
    if (!added.ok) throw new Error(added.findings[0]?.problem);
    expect(added.value.text).toBe(
      TEXT.replace(
        '"look": "green, sugary" } // ask',
        '"look": "green, sugary" }, // ask\n' +
          '        { "code": "PYX", "label": "pyroxenite", "look": "dark, coarse", "provisional": true }',
      ),
    );
    expect(added.value.schema.lists.rocks?.codes.at(-1)).toEqual({ ...entry, provisional: true });
    expect(checkSchema(added.value.schema).map((finding) => finding.code)).toEqual(['schema-provisional']);
  });

  it('goes into a list that this file has not touched yet', () => {
    const bare = '{ "format": 1, "name": "ours", "extends": "orogenic-gold" }';
    const added = addProvisionalCode(file(bare), 'rocks', entry);
    expect(added.ok && added.value.schema.lists.rocks?.codes.at(-1)?.code).toBe('PYX');
    expect(added.ok && added.value.schema.lists.rocks?.codes.length).toBe(40);
  });

  it('is refused where its code is there already, capitals aside, or its pair is', () => {
    const again = addProvisionalCode(file(TEXT), 'rocks', { ...entry, code: 'bas' });
    expect(again.ok ? [] : again.findings.map((finding) => finding.code)).toEqual(['schema-code-twice']);
    const pair = addProvisionalCode(file(TEXT), 'rocks', { ...entry, pair: 'ba' });
    expect(pair.ok ? [] : pair.findings.map((finding) => finding.code)).toEqual(['schema-strokes-clash']);
    expect(pair.ok ? undefined : pair.findings[0]?.place.file).toBe('logging.json');
  });

  it('is not refused for what was wrong before', () => {
    const wrong = TEXT.replace('"look": "green, sugary"', '"look": "", "pair": "dd"');
    expect(addProvisionalCode(file(wrong), 'rocks', entry).ok).toBe(true);
  });

  it('leaves a file alone that can’t be read', () => {
    expect(addProvisionalCode(file('{'), 'rocks', entry).ok).toBe(false);
  });
});

describe('codes of an imposed library', () => {
  it('go into a list of the project together, agreed and not provisional', () => {
    const added = addCodes(file(TEXT), 'rocks', [entry, { code: '3b', label: 'lava', look: '' }]);
    expect(added.ok && added.value.schema.lists.rocks?.codes.slice(-2).map((code) => code.code)).toEqual([
      'PYX',
      '3b',
    ]);
  });
});
