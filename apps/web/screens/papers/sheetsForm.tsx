import type { ReactNode } from 'react';
import {
  marginSet,
  settingOf,
  sheetCutInto,
  sheetsPriced,
  sheetsTaken,
} from '../../../../src/editing/index.ts';
import { type Path, valueAt } from '../../../../src/files/index.ts';
import { type Axis, type Edge, readLength } from '../../../../src/measure/index.ts';
import type { Paper } from '../../../../src/stash/index.ts';
import { ChoiceBlank } from '../../form/choiceBlank.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { WrittenBlank } from '../../form/writtenBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { useInHand, useMarking } from '../../state/inHand.ts';
import { useOpenLayoutStore } from '../../state/layoutContext.ts';
import { CountOnHandBlank } from './countOnHandBlank.tsx';

const edges = ['left', 'right', 'top', 'bottom'] as const satisfies readonly Edge[];

/** The sheets of one size of a paper, as a docket says it; all of it can be changed. */
export function SheetsForm({ paper, at }: { readonly paper: Paper; readonly at: number }): ReactNode {
  const { papers } = useMessages();
  const numbers = useNumbers();
  const { file, layout } = useInHand();
  const store = useOpenLayoutStore();
  const stock = paper.sheets[at]!;
  const marking = useMarking();
  const { sheetLabels: labels } = papers;
  const path: Path = ['papers', paper.id, 'sheets', at];
  const typed = (...rest: Path) => {
    const text = valueAt(file, [...path, ...rest]);
    return typeof text === 'string' ? text : undefined;
  };
  const price = typed('price');
  const side = (axis: Axis) => (
    <LengthBlank
      name={axis}
      label={labels[axis]}
      value={stock.size[axis]}
      typed={typed('size', axis === 'width' ? 0 : 1)}
      marking={marking}
      least={1}
      editOf={(text) => settingOf(file, [...path, 'size', axis === 'width' ? 0 : 1], text)}
    />
  );
  const margin = (edge: Edge) => (
    <LengthBlank
      name={edge}
      label={labels[edge]}
      value={stock.margin[edge]}
      typed={typed('margin', edge) ?? typed('margin')}
      shown={stock.margin[edge] === 0 ? papers.good : undefined}
      marking={marking}
      least={0}
      editOf={(text) => {
        const reading = readLength(text, layout.units);
        const isGood = reading.ok && reading.length === 0;
        return marginSet(file, paper.id, at, { edge, margin: isGood ? undefined : text });
      }}
    />
  );
  return (
    <li>
      <Sentence
        says={(stock.scrap ? papers.scrapOf : papers.of)(layout.units)}
        blanks={{
          count: (
            <CountOnHandBlank
              name="count"
              label={labels.count}
              value={stock.count}
              scrap={stock.scrap}
              editOf={(count) => settingOf(file, [...path, 'count'], count)}
            />
          ),
          width: side('width'),
          height: side('height'),
          price: (
            <WrittenBlank
              name="price"
              label={labels.price}
              text={numbers.shown(price ?? '')}
              shown={price === undefined ? papers.noPrice : papers.each(numbers.shown(price))}
              hint={papers.hints.price}
              writtenAs={(text) => numbers.written(text) ?? text}
              editOf={(value) => sheetsPriced(file, paper.id, at, value as string | undefined)}
            />
          ),
          grain: (
            <ChoiceBlank
              name="grain"
              label={labels.grain}
              value={stock.grain ?? 'unknown'}
              choices={(['width', 'height', 'unknown'] as const).map((value) => ({
                value,
                says: papers.grains[value],
              }))}
              editOf={(grain) => settingOf(file, [...path, 'grain'], grain === 'unknown' ? undefined : grain)}
            />
          ),
        }}
      />
      <details className="edges">
        <summary>
          {edges.every((edge) => stock.margin[edge] === 0) ? papers.goodEdges : papers.badEdges}
        </summary>
        <Sentence
          says={papers.edges}
          blanks={{
            left: margin('left'),
            right: margin('right'),
            top: margin('top'),
            bottom: margin('bottom'),
          }}
        />
      </details>
      <div className="doings">
        {stock.scrap || stock.count === 0 ? null : (
          <button type="button" className="say" onClick={() => store.make(sheetCutInto(file, paper.id, at))}>
            {papers.cutInto}
          </button>
        )}
        <button type="button" className="say" onClick={() => store.make(sheetsTaken(file, paper.id, at))}>
          {papers.takeSheets}
        </button>
      </div>
    </li>
  );
}
