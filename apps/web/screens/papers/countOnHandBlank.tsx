import type { ReactNode } from 'react';
import { ClosedBlank } from '../../form/blank.tsx';
import { TypedCount } from '../../form/countBlank.tsx';
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
  const { papers } = useMessages();
  const fill = useFill<number | null>(value, filling);
  const none = scrap ? undefined : { says: papers.boughtAsNeeded, set: () => fill.set(null) };
  return <TypedCount {...{ name, label, value, most, fill, none }} least={0} />;
}
