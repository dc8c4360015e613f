import type { ReactNode } from 'react';
import { ClosedBlank } from '../../form/blank.tsx';
import { TypedCount } from '../../form/countBlank.tsx';
import { type Filling, useFill } from '../../form/fill.ts';
import { useOpening } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';
import { useNumbers } from '../../messages/numbers.ts';

type CutsBlankProps = Filling<number | null> & {
  readonly name: string;
  readonly label: string;
  /** `null`: as many as there are. */
  readonly value: number | null;
};

/** As a trimmer file takes them. */
const most = 100_000;

/** A blank for the cuts after which there is a break: a number, or no break. */
export function CutsBlank(props: CutsBlankProps): ReactNode {
  const { cuts } = useMessages().trimming.trimmer;
  const { count } = useNumbers();
  const { open } = useOpening();
  const { name, label, value } = props;
  return open === name ? (
    <OpenCuts {...props} />
  ) : (
    <ClosedBlank name={name} label={label}>
      {value === null ? cuts.any : cuts.counted(value, count(value))}
    </ClosedBlank>
  );
}

function OpenCuts({ name, label, value, ...filling }: CutsBlankProps): ReactNode {
  const { cuts } = useMessages().trimming.trimmer;
  const fill = useFill<number | null>(value, filling);
  const none = { says: cuts.toAny, set: () => fill.set(null) };
  return <TypedCount {...{ name, label, value, most, fill, none }} least={1} />;
}
