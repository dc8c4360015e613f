import { type ReactNode, useState } from 'react';
import { type Axis, type Length, readLength } from '../../../../src/measure/index.ts';
import { ChoiceBlank } from '../../form/choiceBlank.tsx';
import { LengthBlank } from '../../form/lengthBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';
import type { BenchStore } from '../../state/bench.ts';
import type { Making } from '../../state/benchState.ts';
import { markingOf } from '../../state/inHand.ts';

/** Says that a scrap lies there that is not in the plan; the rest is planned with it. */
export function FoundScrap({
  making: { set },
  store,
}: {
  readonly making: Making;
  readonly store: BenchStore;
}): ReactNode {
  const { found } = useMessages().bench.spoil;
  const { layout, trimmer } = set;
  const papers = [...layout.papers.values()];
  const marking = markingOf(layout, trimmer);
  const usual = layout.units === 'in' ? '4 in' : '100 mm';
  const [paper, setPaper] = useState(papers[0]?.id ?? '');
  const [width, setWidth] = useState(usual);
  const [height, setHeight] = useState(usual);
  const lengthOf = (text: string) => {
    const read = readLength(text, layout.units);
    return read.ok ? read.length : null;
  };
  const [across, down] = [lengthOf(width), lengthOf(height)];
  if (papers.length === 0 || across === null || down === null) return null;
  const side = (
    axis: Axis,
    { length, typed, set: fill }: { length: Length; typed: string; set: (text: string) => void },
  ) => (
    <LengthBlank
      name={axis}
      label={found.labels[axis]}
      value={length}
      typed={typed}
      marking={marking}
      least={1}
      onSet={fill}
    />
  );
  return (
    <details className="found-scrap">
      <summary>{found.heading}</summary>
      <Sentence
        says={found.says}
        blanks={{
          paper: (
            <ChoiceBlank
              name="paper"
              label={found.labels.paper}
              value={paper}
              choices={papers.map(({ id, name }) => ({ value: id, says: name, own: true }))}
              onSet={setPaper}
            />
          ),
          width: side('width', { length: across, typed: width, set: setWidth }),
          height: side('height', { length: down, typed: height, set: setHeight }),
        }}
      />
      <p className="deeds">
        <button
          type="button"
          className="say"
          onClick={() =>
            store.tell({
              kind: 'noted',
              mark: { kind: 'found', found: { paper, size: { width: across, height: down } } },
            })
          }
        >
          {found.take}
        </button>
      </p>
    </details>
  );
}
