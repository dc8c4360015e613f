import type { ReactNode } from 'react';
import { settingOf } from '../../../../src/editing/index.ts';
import { isList, type Path, valueAt } from '../../../../src/files/index.ts';
import type { Extra } from '../../../../src/layout/index.ts';
import { CountBlank } from '../../form/countBlank.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { TextBlank } from '../../form/textBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useInHand, useMarking } from '../../state/inHand.ts';
import { useOpenLayoutStore } from '../../state/layoutContext.ts';

/** What is wanted of the leftovers beside the cards, in sentences with blanks; one more may be put to it. */
export function ExtrasForm(): ReactNode {
  const { extras: says } = useMessages().papers.leftovers;
  const { file, layout } = useInHand();
  const store = useOpenLayoutStore();
  const extras = layout.extras ?? [];
  const add = () => {
    const size = layout.units === 'in' ? ['1 1/2 in', '3 in'] : ['40 mm', '80 mm'];
    const extra = { name: says.first, size, count: 4 };
    // A layout without any has no list yet.
    const path = extras.length === 0 ? ['extras'] : ['extras', extras.length];
    store.make(settingOf(file, path, extras.length === 0 ? [extra] : extra));
  };
  return (
    <>
      {extras.length === 0 ? null : (
        <ol className="extras">
          {extras.map((extra, at) => (
            // Extras are told apart by where they stand in the list alone.
            // biome-ignore lint/suspicious/noArrayIndexKey: see above
            <ExtraForm key={at} extra={extra} at={at} />
          ))}
        </ol>
      )}
      <div className="doings">
        <button type="button" className="say" onClick={add}>
          {says.add}
        </button>
      </div>
    </>
  );
}

function ExtraForm({ extra, at }: { readonly extra: Extra; readonly at: number }): ReactNode {
  const { extras: says } = useMessages().papers.leftovers;
  const { file, layout } = useInHand();
  const store = useOpenLayoutStore();
  const marking = useMarking();
  const path: Path = ['extras', at];
  const side = (name: 'width' | 'height' | 'diameter', field: Path) => {
    const typed = valueAt(file, [...path, ...field]);
    return (
      <LengthBlank
        name={name}
        label={says.labels[name]}
        value={name === 'height' ? extra.size.height : extra.size.width}
        typed={typeof typed === 'string' ? typed : undefined}
        marking={marking}
        least={1}
        editOf={(text) => settingOf(file, [...path, ...field], text)}
      />
    );
  };
  const take = () => {
    const all = valueAt(file, ['extras']);
    const alone = isList(all) && all.length === 1;
    store.make(settingOf(file, alone ? ['extras'] : path, undefined));
  };
  const round = extra.shape.kind === 'circle';
  return (
    <li>
      <Sentence
        says={(round ? says.round : says.sized)(layout.units)}
        blanks={{
          name: (
            <TextBlank
              name="name"
              label={says.labels.name}
              value={extra.name}
              editOf={(name) => settingOf(file, [...path, 'name'], name)}
            />
          ),
          width: side('width', ['size', 0]),
          height: side('height', ['size', 1]),
          diameter: side('diameter', ['diameter']),
          count: (
            <CountBlank
              name="count"
              label={says.labels.count}
              value={extra.count ?? 1}
              {...(extra.count === null ? { shown: says.asMany } : {})}
              least={1}
              most={1000}
              editOf={(count) => settingOf(file, [...path, 'count'], count)}
            />
          ),
        }}
      />
      <div className="doings">
        <button type="button" className="say" aria-label={says.takeNamed(extra.name)} onClick={take}>
          {says.take}
        </button>
      </div>
    </li>
  );
}
