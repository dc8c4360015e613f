import { type ReactNode, useState } from 'react';
import { useMessages } from '../messages/messages.ts';
import { ClosedBlank, TypedBlank } from './blank.tsx';
import { type Filling, useFill } from './fill.ts';
import { useOpening } from './sentence.tsx';

type TextBlankProps = Filling<string> & {
  readonly name: string;
  readonly label: string;
  readonly value: string;
};

/** A blank for words of the person's own. */
export function TextBlank(props: TextBlankProps): ReactNode {
  const { open } = useOpening();
  const { name, label, value } = props;
  return open === name ? (
    <OpenText {...props} />
  ) : (
    <ClosedBlank name={name} label={label} own>
      {value}
    </ClosedBlank>
  );
}

function OpenText({ name, label, value, ...filling }: TextBlankProps): ReactNode {
  const { form } = useMessages();
  const fill = useFill(value, filling);
  const [text, setText] = useState(value);
  const [wrong, setWrong] = useState<string | null>(null);
  return (
    <TypedBlank
      name={name}
      label={label}
      text={text}
      hint={form.textHint}
      wrong={wrong}
      onText={(typed) => {
        setText(typed);
        setWrong(fill.set(typed));
      }}
      onClose={(how) => {
        if (how === 'taken back') fill.takeBack();
      }}
    />
  );
}
