import { type ReactNode, useEffect, useRef, useState } from 'react';
import { paperReplaced } from '../../../../src/editing/index.ts';
import type { Layout } from '../../../../src/layout/index.ts';
import type { Paper } from '../../../../src/stash/index.ts';
import { fileProblemSentence } from '../../../../src/words/index.ts';
import { useMessages } from '../../messages/messages.ts';
import { useInHand } from '../../state/inHand.ts';
import { useOpenLayoutStore } from '../../state/layoutContext.ts';

/** Takes a paper out of the stash. What is cut from it is told first, and given another paper in the same step. */
export function TakeOut({ paper }: { readonly paper: Paper }): ReactNode {
  const { papers } = useMessages();
  const { file, layout } = useInHand();
  const store = useOpenLayoutStore();
  const [asks, setAsks] = useState(false);
  const [wrong, setWrong] = useState<string | null>(null);
  const others = [...layout.papers.values()].filter(({ id }) => id !== paper.id);
  const [chosen, setChosen] = useState<string | null>(null);
  const instead = others.find(({ id }) => id === chosen) ?? others[0];
  const cut = cutFrom(layout, paper.id);
  const told = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (asks) told.current?.focus();
  }, [asks]);

  const take = (by: string) => {
    const problems = store.make(paperReplaced(file, paper.id, by));
    setWrong(problems === null ? null : problems.map(fileProblemSentence).join(' '));
  };
  if (!asks) {
    return (
      <div className="doings">
        <button
          type="button"
          className="say"
          aria-label={papers.takeNamed(paper.name)}
          onClick={() => (cut.base || cut.parts.length > 0 ? setAsks(true) : take(''))}
        >
          {papers.take}
        </button>
      </div>
    );
  }
  return (
    <fieldset className="take-out">
      <p ref={told} tabIndex={-1}>
        {papers.isCut}
      </p>
      <ul>
        {cut.base ? <li>{papers.theBase}</li> : null}
        {cut.parts.map(({ id, name }) => (
          <li key={id} translate="no">
            {name}
          </li>
        ))}
      </ul>
      {instead === undefined ? (
        <p>{papers.noOther}</p>
      ) : (
        <>
          <fieldset className="choices">
            <legend>{papers.cutInstead}</legend>
            {others.map(({ id, name }) => (
              <label key={id}>
                <input
                  type="radio"
                  name={`instead of ${paper.id}`}
                  checked={id === instead.id}
                  onChange={() => setChosen(id)}
                />
                <span translate="no">{name}</span>
              </label>
            ))}
          </fieldset>
          <p className="wrong" role="alert" lang="en">
            {wrong}
          </p>
        </>
      )}
      <div className="deeds">
        {instead === undefined ? null : (
          <button type="button" className="say" onClick={() => take(instead.id)}>
            {papers.takeAndGive}
          </button>
        )}
        <button
          type="button"
          className="say"
          onClick={() => {
            setAsks(false);
            setWrong(null);
          }}
        >
          {papers.leaveIt}
        </button>
      </div>
    </fieldset>
  );
}

/** What is cut from a paper. */
function cutFrom(layout: Layout, id: string): { readonly base: boolean; readonly parts: Layout['parts'] } {
  return {
    base: layout.base.papers.includes(id),
    parts: layout.parts.filter(({ papers }) => papers.includes(id)),
  };
}
