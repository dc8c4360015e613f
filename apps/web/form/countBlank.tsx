import { type ReactNode, useState } from 'react';
import { useMessages } from '../messages/messages.ts';
import { useNumbers } from '../messages/numbers.ts';
import { ClosedBlank, TypedBlank } from './blank.tsx';
import { type Fill, type Filling, useFill } from './fill.ts';
import { useOpening } from './sentence.tsx';

type CountBlankProps = Filling<number> & {
  readonly name: string;
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  /** What stands in the blank while it is closed; the number itself when absent. */
  readonly shown?: string;
};

/** A blank for a whole number. */
export function CountBlank(props: CountBlankProps): ReactNode {
  const { open } = useOpening();
  const { count } = useNumbers();
  const { name, label, value, shown } = props;
  return open === name ? (
    <OpenCount {...props} />
  ) : (
    <ClosedBlank name={name} label={label}>
      {shown ?? count(value)}
    </ClosedBlank>
  );
}

function OpenCount({ name, label, value, least, most, ...filling }: CountBlankProps): ReactNode {
  return <TypedCount {...{ name, label, value, least, most }} fill={useFill(value, filling)} />;
}

/** A count being typed, with what counts it up and down; for the blanks that open onto one. */
export function TypedCount({
  name,
  label,
  value,
  least,
  most,
  fill,
  none,
}: {
  readonly name: string;
  readonly label: string;
  /** What stood there when it was opened; `null`: no number. */
  readonly value: number | null;
  readonly least: number;
  readonly most: number;
  readonly fill: Fill<number>;
  /** What may stand there instead of a number, as what to do; a sentence comes back where it may not. */
  readonly none?: { readonly says: string; readonly set: () => string | null } | undefined;
}): ReactNode {
  const { form } = useMessages();
  const numbers = useNumbers();
  const { setOpen } = useOpening();
  const [text, setText] = useState(value === null ? '' : String(value));
  const [wrong, setWrong] = useState<string | null>(null);
  const typed = (now: string) => {
    setText(now);
    const count = numbers.readCount(now);
    setWrong(
      count >= least && count <= most
        ? fill.set(count)
        : form.notACount(numbers.count(least), numbers.count(most)),
    );
  };
  const by = (step: 1 | -1) => {
    const count = numbers.readCount(text);
    typed(String(Math.min(most, Math.max(least, Number.isNaN(count) ? least : count + step))));
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
        {none === undefined ? null : (
          <button
            type="button"
            className="say"
            onClick={() => {
              const problem = none.set();
              setWrong(problem);
              if (problem === null) setOpen(null);
            }}
          >
            {none.says}
          </button>
        )}
      </div>
    </TypedBlank>
  );
}
