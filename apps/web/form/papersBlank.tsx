import { type ReactNode, useEffect, useId, useRef } from 'react';
import { createPortal } from 'react-dom';
import type { Layout } from '../../../src/layout/index.ts';
import { useMessages } from '../messages/messages.ts';
import { ClosedBlank } from './blank.tsx';
import { type Filling, useFill } from './fill.ts';
import { useOpening } from './sentence.tsx';

type PapersBlankProps = Filling<string | readonly string[] | null> & {
  readonly name: string;
  readonly label: string;
  readonly layout: Layout;
  /** Ids of the papers dealt to the cards in turn; none: it is bought. */
  readonly papers: readonly string[];
};

/** A blank for the papers that are dealt to the cards in turn; filled as the file holds them: an id, ids, `null`. */
export function PapersBlank(props: PapersBlankProps): ReactNode {
  const { open } = useOpening();
  const { card } = useMessages();
  const { name, label, layout, papers } = props;
  const names = papers.map((id) => layout.papers.get(id)?.name ?? id);
  const last = names.at(-1);
  return (
    <>
      <ClosedBlank name={name} label={label} own={names.length > 0}>
        {last === undefined
          ? card.bought
          : names.length === 1
            ? last
            : card.dealt.joined(names.slice(0, -1).join(card.dealt.comma), last)}
      </ClosedBlank>
      {open === name ? <OpenPapers {...props} /> : null}
    </>
  );
}

function asFiled(papers: readonly string[]): string | readonly string[] | null {
  return papers.length === 0 ? null : papers.length === 1 ? papers[0]! : papers;
}

/** Stands for what is no paper in the list of choices. */
const none = '';

function OpenPapers({ label, layout, papers, ...filling }: PapersBlankProps): ReactNode {
  const { card, form } = useMessages();
  const { below, setOpen } = useOpening();
  const fill = useFill(asFiled(papers), filling);
  const id = useId();
  const first = useRef<HTMLSelectElement>(null);
  useEffect(() => {
    if (below !== null) first.current?.focus();
  }, [below]);
  if (below === null) return null;
  const set = (at: number, paper: string) => {
    const dealt = paper === none ? papers.toSpliced(at, 1) : papers.toSpliced(at, 1, paper);
    fill.set(asFiled(dealt));
  };
  return createPortal(
    <fieldset
      className="opened dealt"
      onKeyDown={(event) => {
        if (event.key !== 'Escape' && event.key !== 'Enter') return;
        if (event.key === 'Escape') fill.takeBack();
        event.preventDefault();
        setOpen(null);
      }}
    >
      <legend>{label}</legend>
      <ol>
        {[...papers, none].map((paper, at) => (
          // The papers are told apart by the card they are dealt to.
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          <li key={at}>
            <label htmlFor={`${id}-${at}`}>{at === 0 ? card.dealt.first : card.dealt.next(at + 1)}</label>{' '}
            <select
              ref={at === 0 ? first : null}
              id={`${id}-${at}`}
              className="blank-choice"
              value={paper}
              onChange={(event) => set(at, event.currentTarget.value)}
            >
              <option value={none}>{at === 0 ? card.bought : card.dealt.noMore}</option>
              {[...layout.papers.values()].map((each) => (
                <option key={each.id} value={each.id} translate="no">
                  {each.name}
                </option>
              ))}
            </select>
          </li>
        ))}
      </ol>
      <p className="hint">{card.dealt.hint}</p>
      <button type="button" className="say done" onClick={() => setOpen(null)}>
        {form.done}
      </button>
    </fieldset>,
    below,
  );
}
