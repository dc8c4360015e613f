import { type ReactNode, useState } from 'react';
import { showLengthWithUnit, type Units } from '../../../../src/measure/index.ts';
import type { Paper } from '../../../../src/stash/index.ts';
import { ChoiceBlank, choicesOf } from '../../form/choiceBlank.tsx';
import { CountBlank } from '../../form/countBlank.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useAsking } from '../../state/asking.ts';
import { markingOf, useInHand } from '../../state/inHand.ts';
import { useOpenLayout } from '../../state/layoutContext.ts';
import { CountOnHandBlank } from '../papers/countOnHandBlank.tsx';
import { type SheetSize, sizesFrom } from '../papers/sheetSizes.ts';
import { RecastTold } from './recastTold.tsx';
import {
  baseOf,
  countOf,
  marksOf,
  nothingWished,
  type SheetsWished,
  sizeOf,
  type Wished,
  wishesOf,
} from './wished.ts';

/** What is wished, in sentences with blanks, and what comes of it; loaded when it is wanted. */
export default function Wishing(): ReactNode {
  const { recast } = useMessages();
  const { layout, arrangement } = useInHand();
  const { trimmer } = useOpenLayout((state) => state.cutting);
  const [changes, setChanges] = useState<Partial<Wished>>({});
  const [asking, ask] = useAsking<'recast'>();
  const wished = { ...nothingWished(layout), ...changes };
  const wish = (change: Partial<Wished>) => setChanges({ ...changes, ...change });
  const isUnknown = arrangement.parts.some(({ cut }) => cut === null);
  const papers = [...layout.papers.values()].filter((paper) => paper.sheets.some(({ scrap }) => !scrap));
  return (
    <>
      <p>{recast.about}</p>
      <Wanted wished={wished} wish={wish} />
      {papers.map((paper) => (
        <Sheets
          key={paper.id}
          paper={paper}
          units={wished.units}
          wished={wished.sheets[paper.id] ?? null}
          wish={(other) => {
            const { [paper.id]: _, ...others } = wished.sheets;
            wish({ sheets: other === null ? others : { ...others, [paper.id]: other } });
          }}
        />
      ))}
      <p className="deeds">
        <button
          type="button"
          className="say"
          disabled={isUnknown || asking.stage === 'asking'}
          onClick={() =>
            ask({
              name: 'recast',
              set: { layout, arrangement, trimmer },
              wishes: wishesOf(wished, layout, trimmer),
            })
          }
        >
          {recast.go}
        </button>
      </p>
      {isUnknown ? <p>{recast.unknown}</p> : null}
      <div role="status">
        {asking.stage === 'asking' ? <p>{recast.planning}</p> : null}
        {asking.stage === 'failed' ? <p className="notice">{recast.failed(asking.message)}</p> : null}
      </div>
      {asking.stage === 'told' && asking.question.set.layout === layout ? (
        <RecastTold told={asking.told} drawn={layout} units={asking.question.wishes.units ?? layout.units} />
      ) : null}
    </>
  );
}

interface Form<Of> {
  readonly wished: Of;
  readonly wish: (change: Partial<Of>) => void;
}

/** The card, the units, the marks and how many, as a sentence. */
function Wanted({ wished, wish }: Form<Wished>): ReactNode {
  const { recast } = useMessages();
  const { layout } = useInHand();
  const { trimmer } = useOpenLayout((state) => state.cutting);
  const { units, cards } = wished;
  const marks = marksOf(wished, trimmer);
  const size = baseOf(wished, layout);
  const marking = { units, step: marks };
  const side = (axis: 'width' | 'height') => (
    <LengthBlank
      key={`${axis} ${units}`}
      name={axis}
      label={recast.labels[axis]}
      value={size[axis]}
      marking={marking}
      least={1}
      onSet={(text) => wish({ [axis]: text })}
    />
  );
  return (
    <Sentence
      says={recast.says}
      blanks={{
        cards: (
          <CountBlank
            name="cards"
            label={recast.labels.cards}
            value={cards}
            least={1}
            most={100_000}
            onSet={(many) => wish({ cards: many })}
          />
        ),
        width: side('width'),
        height: side('height'),
        units: (
          <ChoiceBlank<Units>
            name="units"
            label={recast.labels.units}
            value={units}
            choices={choicesOf(recast.units)}
            // Marks of other units are seldom what was meant.
            onSet={(to) => wish({ units: to, marks: null })}
          />
        ),
        marks: (
          <LengthBlank
            key={`marks ${units}`}
            name="marks"
            label={recast.labels.marks}
            value={marks}
            marking={marking}
            least={1}
            onSet={(text) => wish({ marks: text })}
          />
        ),
      }}
    />
  );
}

/** The sheets of one paper: as they are, or others. */
function Sheets({
  paper,
  units,
  wished,
  wish,
}: {
  readonly paper: Paper;
  readonly units: Units;
  readonly wished: SheetsWished | null;
  readonly wish: (other: SheetsWished | null) => void;
}): ReactNode {
  const { recast, papers } = useMessages();
  const { trimmer } = useOpenLayout((state) => state.cutting);
  const all = sizesFrom(units);
  const choose = (size: SheetSize | 'own' | 'same') => {
    if (size === 'same') {
      wish(null);
      return;
    }
    // A size of her own begins with that of the sheets there are.
    const { width, height } =
      wished === null ? paper.sheets.find(({ scrap }) => !scrap)!.size : sizeOf(wished);
    wish({
      size,
      width: showLengthWithUnit(width, units),
      height: showLengthWithUnit(height, units),
      count: wished === null ? countOf(paper) : wished.count,
    });
  };
  const side = (axis: 'width' | 'height') =>
    wished === null ? null : (
      <LengthBlank
        name={axis}
        label={papers.sheetLabels[axis]}
        value={sizeOf(wished)[axis]}
        typed={wished[axis]}
        marking={markingOf({ units }, trimmer)}
        least={1}
        onSet={(text) => wish({ ...wished, [axis]: text })}
      />
    );
  const says =
    wished === null ? recast.sheetsSame : wished.size === 'own' ? recast.sheetsOwn : recast.sheetsOther;
  return (
    <Sentence
      says={says}
      blanks={{
        paper: <span translate="no">{paper.name}</span>,
        size: (
          <ChoiceBlank<SheetSize | 'own' | 'same'>
            name="size"
            label={papers.sizeLabel}
            value={wished?.size ?? 'same'}
            choices={[
              { value: 'same', says: recast.same, own: false },
              ...all.map((value) => ({ value, says: papers.sizes[value], own: false })),
              { value: 'own', says: recast.own, own: false },
            ]}
            onSet={choose}
          />
        ),
        width: side('width'),
        height: side('height'),
        count:
          wished === null ? null : (
            <CountOnHandBlank
              name="count"
              label={papers.sheetLabels.count}
              value={wished.count}
              onSet={(count) => wish({ ...wished, count })}
            />
          ),
      }}
    />
  );
}
