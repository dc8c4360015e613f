import { describe, expect, it } from 'vitest';
import { statusLine } from './world.ts';

/** What stands on the terminal's last line after all that was written to it. */
function terminal(isTTY: boolean) {
  const written: string[] = [];
  const status = statusLine({
    isTTY,
    columns: 20,
    write: (text: string | Uint8Array) => {
      written.push(String(text));
      return true;
    },
  });
  return { status, written, seen: () => written.join('').split('\r\u001b[2K').at(-1) };
}

describe('the status line', () => {
  it('stands in place of the one before, never longer than the terminal is wide, and is wiped', () => {
    const { status, written, seen } = terminal(true);
    status('Meadow: being planned …');
    expect(seen()).toBe('Meadow: being plan…');
    status('Bark: 2 sheets …');
    status('Bark: 2 sheets …');
    expect(seen()).toBe('Bark: 2 sheets …');
    expect(written).toHaveLength(2);
    status('');
    expect(seen()).toBe('');
    expect(written.join('')).not.toContain('\n');
  });

  it('is shown on a terminal only', () => {
    const { status, written } = terminal(false);
    status('Meadow: being planned …');
    status('');
    expect(written).toEqual([]);
  });
});
