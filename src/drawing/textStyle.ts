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

/** The styles of a booklet, all following the size of its body text (10.5 pt when not given; 16 for large print). */
export function textStyles(
  bodyPt = 10.5,
): Readonly<Record<'title' | 'heading' | 'subheading' | 'body' | 'table' | 'small', TextStyle>> {
  const style = (size: number, leading: number, weight: Weight): TextStyle => ({
    sizePt: bodyPt * size,
    leadingPt: bodyPt * leading,
    weight,
    colour: black,
  });
  return {
    title: style(2.1, 2.4, 'semibold'),
    heading: style(1.45, 1.8, 'semibold'),
    subheading: style(1.1, 1.4, 'semibold'),
    body: style(1, 1.36, 'regular'),
    table: style(0.95, 1.25, 'regular'),
    small: style(0.82, 1.1, 'regular'),
  };
}
