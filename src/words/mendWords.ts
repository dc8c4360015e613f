import { type Axis, type Edge, type Length, showLengthWithUnit } from '../measure/index.ts';
import { counted } from './count.ts';
import { shownDegrees } from './degrees.ts';
import type { Showing } from './showing.ts';

/** What mends something that is wrong with a layout, as data. */
export type MendTold =
  /** A length set to another. */
  | {
      readonly by: 'length';
      readonly of: Axis | 'diameter' | 'inset' | 'gap' | 'template' | 'overlap' | Edge;
      readonly to: Length;
    }
  /** A folded ribbon set to another slant. */
  | { readonly by: 'slant'; readonly degrees: number }
  /** Both borders along an axis set to one length. */
  | { readonly by: 'both borders'; readonly axis: Axis; readonly to: Length }
  /** Moved along an axis until the border on an edge is this. */
  | { readonly by: 'border'; readonly edge: Edge; readonly to: Length }
  /** Grown or made smaller along an axis, and then as far from both edges. */
  | { readonly by: 'even size'; readonly axis: Axis; readonly to: Length; readonly border: Length }
  | { readonly by: 'equal border'; readonly to: Length }
  | { readonly by: 'fill'; readonly axis: Axis }
  | { readonly by: 'centre'; readonly axis: Axis | 'both' }
  | { readonly by: 'leave out'; readonly edge: Edge }
  | { readonly by: 'turned size' | 'size' | 'cut size'; readonly width: Length; readonly height: Length }
  | { readonly by: 'not torn'; readonly axis: Axis }
  | { readonly by: 'laid on'; readonly face: 'base' | 'back' }
  | { readonly by: 'above' | 'below'; readonly other: string }
  | { readonly by: 'beside'; readonly other: string; readonly edge: Edge }
  | { readonly by: 'raised' | 'side fold' | 'taken off' | 'locked' | 'print locked' | 'either way' }
  | { readonly by: 'one piece' | 'free' | 'usual allowance' }
  | { readonly by: 'row'; readonly axis: Axis; readonly count: number; readonly gap: Length }
  | { readonly by: 'pieces shorter'; readonly from: Length; readonly to: Length }
  | { readonly by: 'foam' | 'allowance'; readonly to: Length }
  /** `order`: the order of assembly is worked out instead of said. */
  | { readonly by: 'flat' | 'all flat' | 'order' | 'tape' }
  | { readonly by: 'stations'; readonly count: number }
  /** The name is empty where none of that size is sold. */
  | { readonly by: 'envelope'; readonly name: string; readonly width: Length; readonly height: Length }
  | { readonly by: 'envelope paper'; readonly gsm: number }
  | { readonly by: 'cards'; readonly count: number }
  | { readonly by: 'more sheets'; readonly count: number; readonly more: number };

/** What mends it in a few words, as what then is: `height 3 3/4 in`, `laid edge to edge on the left`. */
export function mendWords(told: MendTold, { units, glyphs }: Showing): string {
  const length = (one: Length) => showLengthWithUnit(one, units, glyphs);
  switch (told.by) {
    case 'length':
      return lengthWords(told.of, told.to, length(told.to));
    case 'slant':
      return `a slant of ${shownDegrees(told.degrees)}`;
    case 'both borders':
      return `${length(told.to)} from both ${told.axis === 'width' ? 'sides' : 'the top and the bottom'}`;
    case 'border':
      return told.to === 0
        ? `moved until it lies edge to edge ${edgeWords[told.edge]}`
        : `moved until it lies ${length(told.to)} from the ${told.edge}`;
    case 'even size':
      return `${sizeName[told.axis]} ${length(told.to)}, with ${length(told.border)} ${told.axis === 'width' ? 'on either side' : 'above and below'}`;
    case 'equal border':
      return `inset ${length(told.to)} all round`;
    case 'fill':
      return `as ${told.axis === 'width' ? 'wide' : 'high'} as the room it has there`;
    case 'centre':
      return `laid in the middle${{ width: ', from left to right', height: ', from top to bottom', both: '' }[told.axis]}`;
    case 'tape':
      return 'what lies flat held with double-sided tape';
    case 'stations':
      return counted(told.count, 'station');
    case 'leave out':
      return `the distance from the ${told.edge} left out, so that it is worked out`;
    case 'turned size':
      return `turned by a quarter: ${length(told.width)} wide and ${length(told.height)} high`;
    case 'size':
      return `${length(told.width)} wide and ${length(told.height)} high, in the middle`;
    case 'not torn':
      return told.axis === 'width' ? 'not torn at the sides' : 'not torn at the top and the bottom';
    case 'laid on':
      return `laid on the ${told.face === 'base' ? 'front' : 'back'} instead`;
    case 'above':
      return `moved up the pile, above ${told.other}`;
    case 'below':
      return `moved down the pile, below ${told.other}`;
    case 'beside':
      return `moved until it lies beside ${told.other}, ${besideWords[told.edge]}`;
    case 'raised':
      return 'raised over what it lies on';
    case 'side fold':
      return 'given a fold at the side';
    case 'taken off':
      return 'taken off the pile';
    case 'locked':
      return 'cut only as it stands, so that the grain runs along the fold';
    case 'print locked':
      return 'cut only with its print upright';
    case 'either way':
      return 'cut either way round';
    case 'usual allowance':
      return 'given the usual allowance';
    case 'one piece':
      return 'one piece on each card';
    case 'free':
      return 'cut either way, so that the print may lie on its side';
    case 'row':
      return `its ${told.count} pieces laid in a ${told.axis === 'width' ? 'row' : 'column'}, ${length(told.gap)} apart`;
    case 'cut size':
      return `cut ${length(told.width)} wide and ${length(told.height)} high`;
    case 'pieces shorter':
      return `its pieces of ${length(told.from)} cut ${length(told.to)}`;
    case 'allowance':
      return `its panels within narrower by ${length(told.to)}`;
    case 'foam':
      return `foam ${length(told.to)} thick`;
    case 'flat':
      return 'glued flat, without foam';
    case 'order':
      return 'put together in the order that is worked out';
    case 'all flat':
      return 'everything glued flat, without foam';
    case 'envelope':
      return `put in the envelope ${told.name === '' ? '' : `${told.name}, `}${length(told.width)} wide and ${length(told.height)} high`;
    case 'envelope paper':
      return `put in an envelope of paper of ${told.gsm} g/m²`;
    case 'cards':
      return counted(told.count, 'card');
    case 'more sheets':
      return `${counted(told.count, 'sheet')} on hand, ${told.more} more`;
  }
}

const sizeName = { width: 'width', height: 'height' } as const satisfies Record<Axis, string>;

function lengthWords(of: Extract<MendTold, { by: 'length' }>['of'], to: Length, shown: string): string {
  if (of === 'left' || of === 'right' || of === 'top' || of === 'bottom') {
    return to === 0 ? `edge to edge ${edgeWords[of]}` : `${shown} from the ${of}`;
  }
  return of === 'gap' && to === 0 ? 'no gap' : `${of} ${shown}`;
}

const edgeWords = {
  left: 'on the left',
  right: 'on the right',
  top: 'on top',
  bottom: 'at the bottom',
} as const satisfies Record<Edge, string>;

const besideWords = {
  left: 'to the left of it',
  right: 'to the right of it',
  top: 'above it',
  bottom: 'below it',
} as const satisfies Record<Edge, string>;
