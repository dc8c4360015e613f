import { bestPattern } from '../cutting/index.ts';
import type { SheetStock } from '../stash/index.ts';
import { canSquare, cutLimitsOf, squaredSize, type Trimmer, wideEnough } from '../trimming/index.ts';
import type { Piece } from './piece.ts';

/**
 * The most pieces of one kind that edge-to-edge cuts give from one sheet of a stock, nothing else being cut from it; 0
 * where none fits. `proved`: no way of cutting gives more.
 */
export function piecesPerSheet(
  { size: piece, turn }: Pick<Piece, 'size' | 'turn'>,
  { size, margin }: Pick<SheetStock, 'size' | 'margin'>,
  trimmer: Trimmer | null,
): { readonly count: number; readonly proved: boolean } {
  if (!canSquare(size, margin, trimmer) || !wideEnough(piece, trimmer)) return { count: 0, proved: true };
  const sheet = squaredSize(size, margin);
  // No sheet holds more than its area; thousands of a thing are as good as a few less.
  const need = Math.min(9_999, Math.floor((sheet.width * sheet.height) / (piece.width * piece.height)));
  if (need === 0) return { count: 0, proved: true };
  const items = [{ ...piece, need, turns: turn === 'free' }];
  const best = bestPattern({ sheet, items, values: [1], limits: cutLimitsOf(trimmer) });
  return { count: best.value, proved: best.value === best.bound };
}
