import { createContext, Fragment, type ReactNode, useContext, useMemo, useState } from 'react';

/**
 * A sentence of a printed form: `says` has its words, with the name of each blank in braces, and `blanks` what stands
 * there. What an open blank opens onto lies below the sentence.
 */
export function Sentence({
  says,
  blanks,
}: {
  readonly says: string;
  readonly blanks: Readonly<Record<string, ReactNode>>;
}): ReactNode {
  const [open, setOpen] = useState<string | null>(null);
  const [below, setBelow] = useState<HTMLElement | null>(null);
  const opening = useMemo(() => ({ open, setOpen, below }), [open, below]);
  return (
    <OpeningContext value={opening}>
      <p className="sentence">
        {says.split(/(\{[^}]*\})/u).map((text, index) => {
          const name = /^\{([^}]*)\}$/u.exec(text)?.[1];
          const piece = name === undefined ? <Words>{text}</Words> : (blanks[name] ?? null);
          // The pieces of a sentence are told apart by where they stand in it.
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          return <Fragment key={index}>{piece}</Fragment>;
        })}
      </p>
      <div className="below-sentence" ref={setBelow} />
    </OpeningContext>
  );
}

/** The form's own words in a sentence: lines break within them alone, so that no comma stands apart from its blank. */
export function Words({ children }: { readonly children: string }): ReactNode {
  return <span className="words">{children}</span>;
}

interface Opening {
  /** The blank that is open; one at a time. */
  readonly open: string | null;
  readonly setOpen: (blank: string | null) => void;
  /** Where an open blank puts what it opens onto. */
  readonly below: HTMLElement | null;
}

const OpeningContext = createContext<Opening | null>(null);

/** The sentence a blank stands in. */
export function useOpening(): Opening {
  const opening = useContext(OpeningContext);
  if (opening === null) throw new Error('A blank stands in a sentence');
  return opening;
}
