import { expect, test } from 'vitest';
import { planned, restfulTrimmer, tideSet } from '../../../src/guide/testing/sets.ts';
import { madeGuide } from './madeGuide.ts';

test('what goes wrong comes out as data', async () => {
  const set = await planned(tideSet(), restfulTrimmer);
  const answer = await madeGuide(
    { ...set, stakes: [], hand: null, post: null, sheetFormat: 'a4', units: 'mm', bodyPt: 12, madeAt: 0 },
    () => Promise.reject(new Error('the type could not be fetched (404)')),
  );
  expect(answer).toEqual({ kind: 'failed', message: 'the type could not be fetched (404)' });
});
