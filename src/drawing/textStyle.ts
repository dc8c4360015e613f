import { black } from './ink.ts';
import type { Weight } from './mark.ts';

/** How a run of text is set. */
export interface TextStyle {
  readonly sizePt: number;
  /** From baseline to baseline. */
  readonly leadingPt: number;
  readonly weight: Weight;
  readonly colour: string;
}

/** From this size of the body text on, print counts as large. */
export const largePrintPt = 14;

/**
 * The styles of a booklet, all following the size of its body text (10.5 pt when not given; 16 for large print). In
 * large print nothing is set smaller than the body text: who asks for it cannot read what is.
 */
export function textStyles(
  bodyPt = 10.5,
): Readonly<Record<'title' | 'heading' | 'subheading' | 'body' | 'table' | 'small', TextStyle>> {
  const style = (size: number, leading: number, weight: Weight): TextStyle => ({
    sizePt: bodyPt * size,
    leadingPt: bodyPt * leading,
    weight,
    colour: black,
  });
  const lesser = (size: number) => (bodyPt < largePrintPt ? size : 1);
  return {
    title: style(2.1, 2.4, 'semibold'),
    heading: style(1.45, 1.8, 'semibold'),
    subheading: style(1.1, 1.4, 'semibold'),
    body: style(1, 1.36, 'regular'),
    table: style(lesser(0.95), 1.25, 'regular'),
    small: style(lesser(0.82), bodyPt < largePrintPt ? 1.1 : 1.25, 'regular'),
  };
}
