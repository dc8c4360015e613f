import { type ReactNode, useEffect, useId, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import { useMessages } from '../messages/messages.ts';
import { ClosedBlank } from './blank.tsx';
import { type Filling, useFill } from './fill.ts';
import { useOpening } from './sentence.tsx';

type ChoiceBlankProps<Value extends string> = Filling<Value> & {
  readonly name: string;
  readonly label: string;
  readonly value: Value;
  readonly choices: readonly Choice<Value>[];
};

/** One of the few words that may stand in a blank. */
export interface Choice<Value extends string> {
  readonly value: Value;
  readonly says: string;
  /** Whether it is the person's own word: a name she gave. */
  readonly own?: boolean;
}

/** The choices whose words stand in the catalogue, in its order. */
export function choicesOf<Value extends string>(
  words: Readonly<Record<Value, string>>,
): readonly Choice<Value>[] {
  return (Object.entries(words) as [Value, string][]).map(([value, says]) => ({ value, says, own: false }));
}

/** A blank for one of a few words, which opens onto them. */
export function ChoiceBlank<Value extends string>(props: ChoiceBlankProps<Value>): ReactNode {
  const { open } = useOpening();
  const { name, label, value, choices } = props;
  const chosen = choices.find((choice) => choice.value === value);
  return (
    <>
      <ClosedBlank name={name} label={label} own={chosen?.own ?? true}>
        {chosen?.says ?? value}
      </ClosedBlank>
      {open === name ? <OpenChoice {...props} /> : null}
    </>
  );
}

function OpenChoice<Value extends string>({
  name,
  label,
  value,
  choices,
  ...filling
}: ChoiceBlankProps<Value>) {
  const { form } = useMessages();
  const { below, setOpen } = useOpening();
  const fill = useFill<Value>(value, filling);
  const [wrong, setWrong] = useState<string | null>(null);
  const group = useRef<HTMLFieldSetElement>(null);
  const tapped = useRef(false);
  const id = useId();
  useEffect(() => {
    if (below === null) return;
    (
      group.current?.querySelector<HTMLInputElement>('input:checked') ?? group.current?.querySelector('input')
    )?.focus();
  }, [below]);
  if (below === null) return null;
  return createPortal(
    <fieldset
      className="opened choices"
      ref={group}
      onPointerDown={() => {
        tapped.current = true;
      }}
      onKeyDown={(event) => {
        tapped.current = false;
        if (event.key === 'Escape') fill.takeBack();
        if (event.key !== 'Escape' && event.key !== 'Enter') return;
        event.preventDefault();
        setOpen(null);
      }}
    >
      <legend>{label}</legend>
      {choices.map((choice) => (
        <label key={choice.value}>
          <input
            type="radio"
            name={`${id}-${name}`}
            value={choice.value}
            checked={choice.value === value}
            onChange={() => {
              const problem = fill.set(choice.value);
              setWrong(problem);
              // Chosen by a tap, it is done; the arrow keys go on choosing.
              if (tapped.current && problem === null) setOpen(null);
            }}
          />
          <span translate={choice.own ? 'no' : undefined}>{choice.says}</span>
        </label>
      ))}
      <p className="wrong" role="alert" lang="en">
        {wrong}
      </p>
      <button type="button" className="say done" onClick={() => setOpen(null)}>
        {form.done}
      </button>
    </fieldset>,
    below,
  );
}
