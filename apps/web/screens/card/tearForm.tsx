import type { ReactNode } from 'react';
import { type Edit, settingOf } from '../../../../src/editing/index.ts';
import { isObject, valueAt } from '../../../../src/files/index.ts';
import type { Part } from '../../../../src/layout/index.ts';
import { type TearDepth, tearOf } from '../../../../src/making/index.ts';
import { type Length, millimetres, showLength, zero } from '../../../../src/measure/index.ts';
import { coreSentence, tearingAdvice, tearSentence, tearsSentences } from '../../../../src/words/index.ts';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { useInHand, useMarking } from '../../state/inHand.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';

const depths = ['least', 'usual', 'most'] as const;

/** How deep the tears of a part go, in blanks, and below it what comes of every join of them. */
export function TearForm({ index }: { readonly index: number }): ReactNode {
  const { card } = useMessages();
  const { file, layout } = useInHand();
  const marking = useMarking();
  const numbers = useNumbers();
  const part = layout.parts[index]!;
  const torn = Object.values(part.torn).filter((depth) => depth > zero);
  const [first] = torn;
  if (first === undefined) return null;
  const path = (field: string) => ['parts', index, 'tear', field] as const;
  const typed = (field: string): string | undefined => {
    const text = valueAt(file, path(field));
    return typeof text === 'string' ? text : undefined;
  };
  const unsaid = (field: string): Edit => {
    const tear = valueAt(file, ['parts', index, 'tear']);
    return isObject(tear) && Object.keys(tear).length === 1
      ? settingOf(file, ['parts', index, 'tear'], undefined)
      : settingOf(file, path(field), undefined);
  };
  // Edges that are torn otherwise than one another have no one depth to be told.
  const depthOf: TearDepth = tearOf(first, part.tear);
  const isOne = torn.every((depth) => depth === first);
  const shown = (length: Length) => numbers.shown(showLength(length, marking.units, 'printed'));
  const depth = (field: (typeof depths)[number]) => (
    <LengthBlank
      name={`tear ${field}`}
      label={card.tear.labels[field]}
      value={depthOf[field]}
      typed={typed(field)}
      shown={typed(field) === undefined && !isOne ? card.tear.byDepth : shown(depthOf[field])}
      marking={marking}
      least={1}
      editOf={(text) => settingOf(file, path(field), text)}
      instead={typed(field) === undefined ? [] : [{ says: card.tear.asUsual, edit: () => unsaid(field) }]}
    />
  );
  const core = part.tear?.core ?? null;
  return (
    <>
      <Sentence
        says={card.tear.says}
        blanks={{
          least: depth('least'),
          usual: depth('usual'),
          most: depth('most'),
          core: (
            <LengthBlank
              name="tear core"
              label={card.tear.labels.core}
              value={core ?? usualCore}
              typed={typed('core')}
              shown={core === null ? card.tear.noCore : shown(core)}
              marking={marking}
              least={1}
              editOf={(text) => settingOf(file, path('core'), text)}
              instead={core === null ? [] : [{ says: card.tear.coreUnsaid, edit: () => unsaid('core') }]}
            />
          ),
        }}
      />
      <p>{card.tear.drawn}</p>
      <TearWords part={part} />
    </>
  );
}

/** A core that shows until she says how broad (common practice, no source). */
const usualCore = millimetres(2);

/** What comes of the joins of one part's torn edges, as it was last worked out. */
function TearWords({ part }: { readonly part: Part }): ReactNode {
  const { card } = useMessages();
  const { layout } = useInHand();
  const made = useOpenLayout((state) => state.made);
  const tears = made.stage === 'told' ? made.docket.tears : null;
  const own = tears?.joins.filter((join) => join.part === part.id || join.against.part === part.id) ?? [];
  const showing = { units: layout.units, glyphs: 'printed' } as const;
  const core = coreSentence(part, layout, showing);
  return (
    <>
      <div className="tear-words" lang="en">
        {core === '' ? null : <p>{core}</p>}
        {tears === null || own.length === 0
          ? null
          : [...own.map((join) => tearSentence(join, tears, layout, showing)), ...tearsSentences(tears)].map(
              (sentence) => <p key={sentence}>{sentence}</p>,
            )}
      </div>
      <details className="how-to-tear">
        <summary>{card.tear.how}</summary>
        <div lang="en">
          {tearingAdvice().map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      </details>
    </>
  );
}
