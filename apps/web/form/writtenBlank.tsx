import { type ReactNode, useState } from 'react';
import type { Edit } from '../../../src/editing/index.ts';
import type { Json } from '../../../src/files/index.ts';
import { ClosedBlank, TypedBlank } from './blank.tsx';
import { useFill } from './fill.ts';
import { useOpening } from './sentence.tsx';

interface WrittenBlankProps {
  readonly name: string;
  readonly label: string;
  /** As it stands in the file; empty where nothing does. */
  readonly text: string;
  /** What stands in the blank while it is closed. */
  readonly shown: string;
  /** Whether that is the person's own words. */
  readonly own?: boolean;
  readonly hint: string;
  /** What a text stands for in the file; what may not stand there is refused by the file itself. */
  readonly writtenAs: (text: string) => Json;
  /** `undefined`: the blank was emptied. */
  readonly editOf: (value: Json | undefined) => Edit;
}

/** A blank that may be left empty. */
export function WrittenBlank(props: WrittenBlankProps): ReactNode {
  const { open } = useOpening();
  const { name, label, shown, own = false } = props;
  return open === name ? (
    <OpenWritten {...props} />
  ) : (
    <ClosedBlank name={name} label={label} own={own}>
      {shown}
    </ClosedBlank>
  );
}

function OpenWritten({ name, label, text, hint, writtenAs, editOf }: WrittenBlankProps): ReactNode {
  const fill = useFill<Json | undefined>(text, { editOf });
  const [typed, setTyped] = useState(text);
  const [wrong, setWrong] = useState<string | null>(null);
  return (
    <TypedBlank
      name={name}
      label={label}
      text={typed}
      hint={hint}
      wrong={wrong}
      onText={(now) => {
        setTyped(now);
        setWrong(fill.set(now.trim() === '' ? undefined : writtenAs(now.trim())));
      }}
      onClose={(how) => {
        if (how === 'taken back') fill.takeBack();
      }}
    />
  );
}
