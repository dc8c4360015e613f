import { describe, expect, it } from 'vitest';
import { isTransform, transformedPath } from './index.ts';

describe('isTransform', () => {
  it.each([
    '',
    ' ',
    'translate(5)',
    'translate( -5 , .5e1 )',
    'rotate(45,1 2)scale(2)',
    ' scale(1 2), skewX(3.)\nskewY(-4) ',
    'matrix(1 0 0 1 0 0)',
  ])('takes %j', (text) => {
    expect(isTransform(text)).toBe(true);
  });

  it.each([
    'translate',
    'translate()',
    'translate(5px)',
    'translate(1 2 3)',
    'rotate(1 2)',
    'rotate(45deg)',
    'matrix(1 0 0 1 0)',
    'scale(1,,2)',
    'scale(1 2',
    'scale(1) and more',
    'move(1 2)',
    'Scale(1)',
    'translate(1e13)',
    'translate(1e999)',
    'translate(NaN)',
  ])('takes no %j', (text) => {
    expect(isTransform(text)).toBe(false);
  });
});

describe('transformedPath', () => {
  it('does the first of the lists first, and in a list the last step first', () => {
    expect(transformedPath('M1 1H2V2Z', ['scale(2)', 'translate(10)'], 3)).toBe('M12 2H14V4Z');
    expect(transformedPath('M1 1H2V2Z', ['translate(10)', 'scale(2)'], 3)).toBe('M22 2H24V4Z');
    expect(transformedPath('M1 1H2V2Z', ['scale(2)translate(10)'], 3)).toBe('M22 2H24V4Z');
  });

  it('rounds to as many decimals as are wanted', () => {
    expect(transformedPath('m0 0h1v1z', ['scale(.33333)'], 2)).toBe('M0 0H0.33V0.33Z');
  });

  it('takes nothing that would be passed over in silence', () => {
    expect(() => transformedPath('M0 0H1V1Z', ['turn(4)'], 2)).toThrow('transform');
    expect(() => transformedPath('M0 0H', [], 2)).toThrow('path data');
  });
});
