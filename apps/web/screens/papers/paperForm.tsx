import { type ReactNode, useId, useState } from 'react';
import { settingOf, sheetsAdded, weightSet } from '../../../../src/editing/index.ts';
import { type Json, type Path, valueAt } from '../../../../src/files/index.ts';
import { showLengthWithUnit, showSize } from '../../../../src/measure/index.ts';
import type { Paper, Up } from '../../../../src/stash/index.ts';
import { ChoiceBlank } from '../../form/choiceBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { TextBlank } from '../../form/textBlank.tsx';
import { WrittenBlank } from '../../form/writtenBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';
import { useInHand } from '../../state/inHand.ts';
import { useOpenLayoutStore } from '../../state/layoutContext.ts';
import { ColourBlank } from './colourBlank.tsx';
import { kindChoices } from './kinds.ts';
import { type SheetSize, sheetSizes, sizesFrom } from './sheetSizes.ts';
import { SheetsForm } from './sheetsForm.tsx';
import { Patch, SheetSwatch } from './swatch.tsx';
import { TakeOut } from './takeOut.tsx';
import { WhatItTakes } from './whatItTakes.tsx';

const ups: readonly Up[] = ['any', 'one-way', 'two-way'];

/** A paper of the stash in words, its sheets, and what the set takes of it. */
export function PaperForm({
  paper,
  longest,
}: {
  readonly paper: Paper;
  /** The longest side of any sheet of the stash. */
  readonly longest: number;
}): ReactNode {
  const { papers } = useMessages();
  const numbers = useNumbers();
  const { layout } = useInHand();
  const id = useId();
  const first = paper.sheets[0];
  return (
    <section className="paper" aria-labelledby={id}>
      <h3 id={id} translate="no">
        {paper.name}
      </h3>
      <figure className="plate">
        {first === undefined ? (
          <Patch layout={layout} id={paper.id} says={papers.swatch(paper.name)} />
        ) : (
          <SheetSwatch
            layout={layout}
            id={paper.id}
            size={first.size}
            longest={longest}
            says={papers.swatch(paper.name)}
          />
        )}
        <figcaption>
          {first === undefined
            ? papers.plateNone
            : (paper.up === 'any' ? papers.plate : papers.plateUp)(
                numbers.shown(showSize(first.size, layout.units, 'printed')),
              )}
        </figcaption>
      </figure>
      <div className="docket">
        <WhatItIs paper={paper} />
        {paper.sheets.length === 0 ? <p>{papers.noSheets}</p> : null}
        <ul className="sheets" aria-label={papers.sheetsOf(paper.name)}>
          {paper.sheets.map((_, at) => (
            // Sheets have no name but their place in the docket.
            // biome-ignore lint/suspicious/noArrayIndexKey: see above
            <SheetsForm key={at} paper={paper} at={at} />
          ))}
        </ul>
        <MoreSheets paper={paper} />
        <WhatItTakes paper={paper} />
        <TakeOut paper={paper} />
      </div>
    </section>
  );
}

/** What a paper is, in two sentences with blanks. */
function WhatItIs({ paper }: { readonly paper: Paper }): ReactNode {
  const { papers } = useMessages();
  const numbers = useNumbers();
  const { file, layout } = useInHand();
  const { labels, hints } = papers;
  const { id, back } = paper;
  const path: Path = ['papers', id];
  const set = (field: string) => (value: Json | undefined) => settingOf(file, [...path, field], value);
  const colourOf = (side: 'front' | 'back') => {
    const field: Path = side === 'front' ? [...path, 'colour'] : [...path, 'back', 'colour'];
    const label = side === 'front' ? labels.colour : labels.backColour;
    return (
      <ColourBlank
        name={`${side} colour`}
        label={label}
        value={side === 'front' ? paper.colour : (back?.colour ?? null)}
        swatch={<Patch layout={layout} id={id} side={side} says={papers.swatch(paper.name)} />}
        editOf={(colour) => settingOf(file, field, colour)}
      />
    );
  };
  const upBlank = (name: string, label: string, value: Up, field: Path) => (
    <ChoiceBlank
      name={name}
      label={label}
      value={value}
      choices={ups.map((up) => ({ value: up, says: papers.ups[up] }))}
      editOf={(up) => settingOf(file, field, up)}
    />
  );
  const thickness = valueAt(file, [...path, 'thickness']);
  const { pounds } = paper;
  const weight =
    pounds !== undefined ? `${pounds.pounds} lb ${pounds.of}` : paper.gsm === null ? null : String(paper.gsm);
  return (
    <>
      <Sentence
        says={papers.is}
        blanks={{
          name: <TextBlank name="name" label={labels.name} value={paper.name} editOf={set('name')} />,
          kind: (
            <ChoiceBlank
              name="kind"
              label={labels.kind}
              value={paper.kind ?? ''}
              choices={kindChoices(papers, paper.kind)}
              editOf={(kind) => set('kind')(kind === '' ? undefined : kind)}
            />
          ),
          gsm: (
            <WrittenBlank
              name="gsm"
              label={labels.gsm}
              text={weight === null ? '' : numbers.shown(weight)}
              shown={
                pounds !== undefined
                  ? papers.pounds(
                      numbers.shown(weight ?? ''),
                      numbers.shown(String(Math.round(paper.gsm ?? 0))),
                    )
                  : weight === null
                    ? papers.noGsm
                    : papers.gsm(numbers.shown(weight))
              }
              hint={hints.gsm}
              writtenAs={(text) => text}
              editOf={(text) => weightSet(file, id, typeof text === 'string' ? text : undefined)}
            />
          ),
          thickness: (
            <WrittenBlank
              name="thickness"
              label={labels.thickness}
              text={typeof thickness === 'string' ? numbers.shown(thickness) : ''}
              shown={
                paper.thickness === null
                  ? papers.notThick
                  : papers.thick(
                      numbers.shown(
                        typeof thickness === 'string' && /[a-z"]/iu.test(thickness)
                          ? thickness
                          : showLengthWithUnit(paper.thickness, 'mm', 'printed'),
                      ),
                    )
              }
              hint={hints.thickness}
              writtenAs={(text) => {
                const written = numbers.written(text) ?? text;
                return /[a-z"'″′”’]/iu.test(written) ? written : `${written} mm`;
              }}
              editOf={set('thickness')}
            />
          ),
          up: upBlank('up', labels.up, paper.up, [...path, 'up']),
          colour: colourOf('front'),
        }}
      />
      <Sentence
        says={back === null ? papers.otherSide : papers.otherSidePrinted}
        blanks={{
          back: (
            <WrittenBlank
              name="back"
              label={labels.back}
              text={back?.name ?? ''}
              shown={back?.name ?? papers.noBack}
              own={back !== null}
              hint={hints.back}
              writtenAs={(text) => text}
              editOf={(name) =>
                name === undefined ? set('back')(undefined) : settingOf(file, [...path, 'back', 'name'], name)
              }
            />
          ),
          backUp: back === null ? null : upBlank('back up', labels.backUp, back.up, [...path, 'back', 'up']),
          backColour: back === null ? null : colourOf('back'),
        }}
      />
    </>
  );
}

/** Puts sheets of another size to a paper. */
function MoreSheets({ paper }: { readonly paper: Paper }): ReactNode {
  const { papers } = useMessages();
  const { file, layout } = useInHand();
  const store = useOpenLayoutStore();
  const sizes = sizesFrom(layout.units);
  const [size, setSize] = useState<SheetSize>(sizes[0]!);
  return (
    <div className="more-sheets">
      <Sentence
        says={papers.addSheets}
        blanks={{
          size: (
            <ChoiceBlank
              name="size"
              label={papers.sizeLabel}
              value={size}
              choices={sizes.map((value) => ({ value, says: papers.sizes[value] }))}
              onSet={setSize}
            />
          ),
        }}
      />
      <button
        type="button"
        className="say"
        onClick={() => store.make(sheetsAdded(file, paper.id, sheetSizes[size]))}
      >
        {papers.add}
      </button>
    </div>
  );
}
