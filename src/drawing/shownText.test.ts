import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { allShown, shownText, standIn } from './shownText.ts';
import { readXml } from './testing/xmlReader.ts';
import { xmlText } from './xmlText.ts';

const latin = (character: string): boolean => character.codePointAt(0)! < 0x250;

describe('shownText', () => {
  test('puts a box for what cannot be shown, one for each character', () => {
    expect(shownText('Paper \u6f22\u5b57 \u{1f384}', latin)).toBe(`Paper ${standIn}${standIn} ${standIn}`);
    expect(allShown('Paper', latin)).toBe(true);
    expect(allShown('Paper \u6f22', latin)).toBe(false);
  });

  test('lets through what is not meant to be seen (Unicode, Default_Ignorable_Code_Point)', () => {
    for (const unseen of ['\u00ad', '\u200d', '\u2060', '\ufe0f']) {
      expect(shownText(`a${unseen}b`, latin)).toBe(`a${unseen}b`);
      expect(allShown(unseen, latin)).toBe(true);
    }
  });

  test('takes white space for a space', () => {
    expect(shownText('a\tb\nc\u2028d', latin)).toBe('a b c d');
  });

  test('never makes a text shorter', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect([...shownText(text, latin)].length).toBe([...text].length);
      }),
    );
  });
});

describe('xmlText', () => {
  test('stands in an attribute and in content, whatever it holds', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const read = readXml(`<a b="${xmlText(text)}">${xmlText(text)}</a>`);
        expect(read.text).toBe(read.attributes.b ?? '');
        expect([...read.text].length).toBe([...text].length);
      }),
    );
  });

  test('puts boxes for lone surrogates and control characters, which XML 1.0 has no way to write', () => {
    expect(xmlText('a\ud800b\u0000c')).toBe(`a${standIn}b${standIn}c`);
  });
});
