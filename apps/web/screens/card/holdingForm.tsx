import type { ReactNode } from 'react';
import { settingOf } from '../../../../src/editing/index.ts';
import { adhesiveFor } from '../../../../src/finished/index.ts';
import type { Layout } from '../../../../src/layout/index.ts';
import { type AdhesiveUse, adhesivesFor, adhesiveUses } from '../../../../src/making/index.ts';
import { showLength, zero } from '../../../../src/measure/index.ts';
import { ChoiceBlank } from '../../form/choiceBlank.tsx';
import { CountBlank } from '../../form/countBlank.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { useInHand, useMarking } from '../../state/inHand.ts';
import { asTyped } from './asTyped.ts';

/** What holds the parts of the set, a sentence for each way that they are held in; nothing where there are none. */
export default function HoldingForm(): ReactNode {
  const { card } = useMessages();
  const { layout } = useInHand();
  const used = adhesiveUses.filter((use) => isUsed(layout, use));
  if (used.length === 0) return null;
  return (
    <details className="holding-form">
      <summary>{card.holding.heading}</summary>
      {used.map((use) => (
        <Adhesive key={use} use={use} />
      ))}
    </details>
  );
}

function isUsed({ parts }: Layout, use: AdhesiveUse): boolean {
  const isBand = ({ tuck }: Layout['parts'][number]) => Object.values(tuck).some((depth) => depth > zero);
  return use === 'holding'
    ? parts.some(isBand)
    : parts.some((part) => part.adhere === use && !(use === 'flat' && isBand(part)));
}

function Adhesive({ use }: { readonly use: AdhesiveUse }): ReactNode {
  const { card } = useMessages();
  const { holding } = card;
  const { file, layout } = useInHand();
  const marking = useMarking();
  const numbers = useNumbers();
  const adhesive = adhesiveFor(layout, use);
  const kinds: readonly (typeof adhesive.kind)[] = adhesivesFor[use];
  const path = (field: string) => ['adhesives', use, field];
  const length = (field: 'width' | 'thickness' | 'inset' | 'span') => {
    const typed = asTyped(file, path(field));
    return (
      <LengthBlank
        name={`${use} ${field}`}
        label={holding.labels[field]}
        value={adhesive[field]}
        typed={typed}
        shown={
          typed === undefined
            ? numbers.shown(showLength(adhesive[field], marking.units, 'printed'))
            : undefined
        }
        marking={marking}
        least={field === 'inset' ? 0 : 1}
        editOf={(text) => settingOf(file, path(field), text)}
        instead={
          typed === undefined
            ? []
            : [{ says: card.tear.asUsual, edit: () => settingOf(file, path(field), undefined) }]
        }
      />
    );
  };
  const minutes = (field: 'handle' | 'dry') => (
    <CountBlank
      name={`${use} ${field}`}
      label={holding.labels[field]}
      value={adhesive[field]}
      least={0}
      most={20_160}
      shown={holding.minutes(adhesive[field])}
      editOf={(now) => settingOf(file, path(field), now)}
    />
  );
  return (
    <Sentence
      says={holding.says[use]}
      blanks={{
        kind: (
          <ChoiceBlank
            name={`${use} kind`}
            label={holding.labels.kind}
            value={adhesive.kind}
            choices={kinds.map((kind) => ({ value: kind, says: holding.kinds[kind] }))}
            editOf={(kind) => settingOf(file, path('kind'), kind === kinds[0] ? undefined : kind)}
          />
        ),
        width: length('width'),
        thickness: length('thickness'),
        inset: length('inset'),
        span: length('span'),
        handle: minutes('handle'),
        dry: minutes('dry'),
      }}
    />
  );
}
