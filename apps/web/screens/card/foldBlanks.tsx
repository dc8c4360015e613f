import type { ReactNode } from 'react';
import { gapOf, gapSet, settingOf } from '../../../../src/editing/index.ts';
import { inches, lengthOfTicks, millimetres, readLength, roundTo } from '../../../../src/measure/index.ts';
import { noRibbonSentence } from '../../../../src/words/index.ts';
import { CountBlank } from '../../form/countBlank.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { WrittenBlank } from '../../form/writtenBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { useInHand, useMarking } from '../../state/inHand.ts';
import { asTyped } from './asTyped.ts';

/** The template of a ribbon or of loops, or the overlap of loops. */
export function FoldLengthBlank({
  index,
  field,
}: {
  readonly index: number;
  readonly field: 'template' | 'overlap';
}): ReactNode {
  const { card } = useMessages();
  const { file, layout } = useInHand();
  const marking = useMarking();
  const { shape } = layout.parts[index]!;
  const value =
    shape.kind === 'loops'
      ? shape[field]
      : shape.kind === 'ribbon' && field === 'template'
        ? shape[field]
        : null;
  if (value === null) return null;
  const path = ['parts', index, field];
  return (
    <LengthBlank
      name={field}
      label={card.shape[field]}
      value={value}
      typed={asTyped(file, path)}
      marking={marking}
      least={field === 'template' ? 1 : 0}
      editOf={(text) => settingOf(file, path, text)}
    />
  );
}

/** The slant of a ribbon, in degrees. */
export function SlantBlank({ index }: { readonly index: number }): ReactNode {
  const { card } = useMessages();
  const numbers = useNumbers();
  const { file, layout } = useInHand();
  const { shape } = layout.parts[index]!;
  if (shape.kind !== 'ribbon') return null;
  const path = ['parts', index, 'slant'];
  return (
    <WrittenBlank
      name="slant"
      label={card.shape.slant}
      text={numbers.shown(String(shape.slant))}
      shown={card.shape.slantShown(numbers.shown(String(Math.round(shape.slant * 10) / 10)))}
      hint={card.shape.slantHint}
      writtenAs={(text) => {
        const written = numbers.written(text.replace(/\s*°$/u, '').replace('−', '-')) ?? text;
        return /^-?\d+(?:\.\d+)?$/u.test(written) ? Number(written) : text;
      }}
      editOf={(value) => settingOf(file, path, value)}
    />
  );
}

/** The gap between the tails of a ribbon: another one sets its slant. */
export function GapBlank({ index }: { readonly index: number }): ReactNode {
  const { card } = useMessages();
  const inHand = useInHand();
  const marking = useMarking();
  if (inHand.layout.parts[index]!.shape.kind !== 'ribbon') return null;
  const { units } = marking;
  const value = roundTo(gapOf(inHand, index), units === 'in' ? inches(1, 64) : millimetres(0.1), 'nearest');
  return (
    <LengthBlank
      name="tail gap"
      label={card.shape.gap}
      value={value}
      marking={marking}
      least={0}
      editOf={(text) => {
        const reading = readLength(text, units);
        if (!reading.ok) return null;
        const made = gapSet(inHand, index, lengthOfTicks(reading.length));
        return 'cannot' in made ? { refused: noRibbonSentence(made, { units, glyphs: 'printed' }) } : made;
      }}
    />
  );
}

/** How many loops a strip makes. */
export function LoopsBlank({ index }: { readonly index: number }): ReactNode {
  const { card } = useMessages();
  const { count } = useNumbers();
  const { file, layout } = useInHand();
  const { shape } = layout.parts[index]!;
  if (shape.kind !== 'loops') return null;
  return (
    <CountBlank
      name="loops"
      label={card.shape.loops}
      value={shape.loops}
      least={1}
      most={100}
      shown={card.shape.loopsShown(count(shape.loops), shape.loops === 1)}
      editOf={(loops) => settingOf(file, ['parts', index, 'loops'], loops)}
    />
  );
}
