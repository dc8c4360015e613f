import { type ReactNode, useState } from 'react';
import { useMessages } from '../messages/messages.ts';
import { ClosedBlank, TypedBlank } from './blank.tsx';
import { type Filling, useFill } from './fill.ts';
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
  const { name, label, value, shown } = props;
  return open === name ? (
    <OpenCount {...props} />
  ) : (
    <ClosedBlank name={name} label={label}>
      {shown ?? value}
    </ClosedBlank>
  );
}

function OpenCount({ name, label, value, least, most, ...filling }: CountBlankProps): ReactNode {
  const { form } = useMessages();
  const fill = useFill(value, filling);
  const [text, setText] = useState(String(value));
  const [wrong, setWrong] = useState<string | null>(null);
  const typed = (now: string) => {
    setText(now);
    const count = /^\s*\d+\s*$/u.test(now) ? Number(now) : Number.NaN;
    setWrong(count >= least && count <= most ? fill.set(count) : form.notACount(least, most));
  };
  const by = (step: 1 | -1) => {
    const count = Number.parseInt(text, 10);
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
      </div>
    </TypedBlank>
  );
}
