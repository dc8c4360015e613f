import type { ReactNode } from 'react';
import {
  type KitEdit,
  kitCounted,
  kitEachSet,
  kitEnvelopesSet,
  kitSheetsSet,
  kitTitled,
} from '../../../../src/editing/index.ts';
import { layoutName } from '../../../../src/kits/index.ts';
import { showSize } from '../../../../src/measure/index.ts';
import { fileProblemSentence } from '../../../../src/words/index.ts';
import { CountBlank } from '../../form/countBlank.tsx';
import { Sentence } from '../../form/sentence.tsx';
import { TextBlank } from '../../form/textBlank.tsx';
import { useMessages } from '../../messages/messages.ts';
import { CountOnHandBlank } from '../papers/countOnHandBlank.tsx';
import { useKit, useOpenKit, useShowing } from './kitContext.ts';

/** What a kit file says, in sentences with blanks: title, seats, cards from each bag, and the sheets of the shared papers. */
export function KitSentences(): ReactNode {
  const { kit: says } = useMessages();
  const { labels } = says;
  const kit = useOpenKit(({ history }) => history.kit);
  const file = useOpenKit(({ history }) => history.file);
  const tries = useTries();
  return (
    <section aria-label={says.documentTitle(kit.title)}>
      <Sentence
        says={says.called}
        blanks={{
          title: (
            <TextBlank
              name="title"
              label={labels.title}
              value={kit.title}
              tries={(to, joins) => tries(kitTitled(file, to), joins)}
            />
          ),
        }}
      />
      <Sentence
        says={says.seated}
        blanks={Object.fromEntries(
          (['seats', 'teacher', 'spare'] as const).map((what) => [
            what,
            <CountBlank
              key={what}
              name={what}
              label={labels[what]}
              value={kit[what]}
              least={what === 'seats' ? 1 : 0}
              most={1_000}
              tries={(to, joins) => tries(kitCounted(file, what, to), joins)}
            />,
          ]),
        )}
      />
      {kit.layouts.map((one, at) => (
        <Sentence
          key={one.id}
          says={says.each}
          blanks={{
            each: (
              <CountBlank
                name="each"
                label={labels.each(layoutName(one))}
                value={one.each}
                least={1}
                most={20}
                tries={(to, joins) => tries(kitEachSet(file, at, to), joins)}
              />
            ),
            layout: <span translate="no">{layoutName(one)}</span>,
          }}
        />
      ))}
      <p>
        <label className="tick">
          <input
            type="checkbox"
            checked={kit.envelopes}
            onChange={({ currentTarget }) => tries(kitEnvelopesSet(file, currentTarget.checked))}
          />
          {says.envelopes}
        </label>
      </p>
      <SharedPapers />
    </section>
  );
}

/** Does an edit; a sentence where it may not be done. */
function useTries(): (edit: KitEdit, joins?: string) => string | null {
  const store = useKit();
  return (edit, joins) => {
    const problems = store.make(edit, joins);
    return problems === null ? null : problems.map(fileProblemSentence).join(' ');
  };
}

function SharedPapers(): ReactNode {
  const { kit: says } = useMessages();
  const papers = useOpenKit(({ history }) => history.kit.papers);
  const file = useOpenKit(({ history }) => history.file);
  const showing = useShowing();
  const tries = useTries();
  return (
    <>
      <h2>{says.headings.papers}</h2>
      {[...papers.values()].flatMap((paper) =>
        paper.sheets.map((sheet, stock) => {
          const size = showSize(sheet.size, showing.units, showing.glyphs);
          const at = { paper: paper.id, stock };
          return (
            <Sentence
              // The sheets of a paper are told apart by where they stand.
              // biome-ignore lint/suspicious/noArrayIndexKey: see above
              key={`${paper.id} ${stock}`}
              says="{paper}, {size}: {sheets}"
              blanks={{
                paper: <span translate="no">{paper.name}</span>,
                size: <span>{size}</span>,
                sheets: (
                  <CountOnHandBlank
                    name="sheets"
                    label={says.labels.sheets(paper.name, size)}
                    value={sheet.count}
                    scrap={sheet.scrap}
                    tries={(to, joins) => tries(kitSheetsSet(file, at, to), joins)}
                  />
                ),
              }}
            />
          );
        }),
      )}
    </>
  );
}
