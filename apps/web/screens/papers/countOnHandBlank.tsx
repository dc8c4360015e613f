import { type ReactNode, useState } from 'react';
import { ClosedBlank, TypedBlank } from '../../form/blank.tsx';
import { type Filling, useFill } from '../../form/fill.ts';
import { useOpening } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';

type CountOnHandProps = Filling<number | null> & {
  readonly name: string;
  readonly label: string;
  /** `null`: as many as needed. */
  readonly value: number | null;
  readonly scrap?: boolean;
};

/** More than anybody has; a layout file takes no more. */
const most = 1_000_000;

/** A blank for how many sheets there are: a number, or as many as needed. */
export function CountOnHandBlank(props: CountOnHandProps): ReactNode {
  const { papers } = useMessages();
  const { open } = useOpening();
  const { name, label, value, scrap = false } = props;
  return open === name ? (
    <OpenCount {...props} />
  ) : (
    <ClosedBlank name={name} label={label}>
      {value === null ? papers.asNeeded : scrap ? papers.scraps(value) : papers.counted(value)}
    </ClosedBlank>
  );
}

function OpenCount({ name, label, value, scrap = false, ...filling }: CountOnHandProps): ReactNode {
  const { form, papers } = useMessages();
  const { setOpen } = useOpening();
  const fill = useFill<number | null>(value, filling);
  const [text, setText] = useState(value === null ? '' : String(value));
  const [wrong, setWrong] = useState<string | null>(null);
  const typed = (now: string) => {
    setText(now);
    const count = /^\s*\d+\s*$/u.test(now) ? Number(now) : Number.NaN;
    setWrong(count <= most ? fill.set(count) : form.notACount(0, most));
  };
  const by = (step: 1 | -1) => {
    const count = Number.parseInt(text, 10);
    typed(String(Math.min(most, Math.max(0, (Number.isNaN(count) ? 0 : count) + step))));
  };
  return (
    <TypedBlank
      name={name}
      label={label}
      text={text}
      hint={form.countHint}
      wrong={wrong}
      inputMode="numeric"
      onText={typed}
      onArrow={by}
      onClose={(how) => {
        if (how === 'taken back') fill.takeBack();
      }}
    >
      <div className="steps">
        <button type="button" className="say" onClick={() => by(-1)}>
          {form.oneLess}
        </button>
        <button type="button" className="say" onClick={() => by(1)}>
          {form.oneMore}
        </button>
        {scrap ? null : (
          <button
            type="button"
            className="say"
            onClick={() => {
              const problem = fill.set(null);
              setWrong(problem);
              if (problem === null) setOpen(null);
            }}
          >
            {papers.boughtAsNeeded}
          </button>
        )}
      </div>
    </TypedBlank>
  );
}
