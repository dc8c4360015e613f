import { describe, expect, it } from 'vitest';
import { readTrimmerFile } from '../../../../src/files/index.ts';
import { fileProblemSentence } from '../../../../src/words/index.ts';
import { newTrimmer, openTrimmer, textIn, trimmerText, withField } from './trimmerText.ts';

const example = `{
  "cardwright_trimmer": 1,
  "name": "Large-print trimmer",
  "units": "mm",
  "marks": "5 mm",
  "narrowest": "25 mm",
  "measuringEdge": "right",
  "hand": "left",
  "sheetsAtOnce": 1,
  "cutsPerSitting": 35
}
`;
const bytesOf = (text: string) => new TextEncoder().encode(text);

describe('the trimmer as it is said', () => {
  it('comes to the very file that says the same, field by field', () => {
    const said = [
      [['name'], 'Large-print trimmer'],
      [['marks'], '5 mm'],
      [['narrowest'], '25 mm'],
      [['measuringEdge'], 'right'],
      [['hand'], 'left'],
      [['sheetsAtOnce'], 1],
      [['cutsPerSitting'], 35],
    ] as const;
    const file = said.reduce((now, [path, value]) => withField(now, path, value), newTrimmer('mm'));
    expect(file).toEqual(JSON.parse(example));
    expect(readTrimmerFile(trimmerText(file))).toEqual(readTrimmerFile(example));
  });

  it('has no limits while nothing is said of it', () => {
    expect(readTrimmerFile(trimmerText(newTrimmer('in')))).toMatchObject({
      trimmer: { marks: null, longest: null, narrowest: null, cutsPerSitting: null, correction: 0 },
    });
  });

  it('keeps every other field where it stands, and leaves nothing empty behind', () => {
    const file = { ...newTrimmer('mm'), 'x-bought': 2019, reach: { otherSide: '100 mm' }, hand: 'left' };
    const further = withField(file, ['reach', 'measuringSide'], '300 mm');
    expect(Object.keys(further)).toEqual(Object.keys(file));
    expect(further.reach).toEqual({ otherSide: '100 mm', measuringSide: '300 mm' });
    const none = withField(
      withField(further, ['reach', 'measuringSide'], undefined),
      ['reach', 'otherSide'],
      undefined,
    );
    expect(none).toEqual({ cardwright_trimmer: 1, units: 'mm', 'x-bought': 2019, hand: 'left' });
    expect(textIn(further, ['reach', 'otherSide'])).toBe('100 mm');
    expect(textIn(none, ['reach', 'otherSide'])).toBeNull();
    expect(textIn(none, ['marks'])).toBeNull();
  });
});

describe('a trimmer file that is opened', () => {
  it('is taken as it stands, with a byte order mark too', () => {
    expect(openTrimmer(bytesOf(example))).toEqual({ file: JSON.parse(example) as unknown });
    expect(openTrimmer(bytesOf(`\uFEFF${example}`))).toEqual({ file: JSON.parse(example) as unknown });
  });

  it('is refused in sentences where it is none', () => {
    const wrong = openTrimmer(bytesOf(example.replace('"25 mm"', '"25 hands"')));
    if (!('problems' in wrong) || wrong.problems === null) throw new Error('it is refused by its fields');
    expect(wrong.problems.map(fileProblemSentence).join(' ')).toContain('25 hands');
    expect(openTrimmer(bytesOf('A letter to my sister'))).toHaveProperty('problems.length', 1);
    expect(openTrimmer(new Uint8Array([0xff, 0xd8, 0xff, 0xe0]))).toEqual({ problems: null });
  });
});
