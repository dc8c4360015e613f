import { Fragment, type ReactNode } from 'react';

/** Words of the catalogue with what is filled in where its name stands in braces: names that a person gave. */
export function Filled({
  says,
  ...names
}: { readonly says: string } & Readonly<Record<string, string>>): ReactNode {
  return says.split(/(\{[^}]*\})/u).map((text, index) => {
    const name = /^\{([^}]*)\}$/u.exec(text)?.[1];
    return name === undefined ? (
      // The pieces of a sentence are told apart by where they stand in it.
      // biome-ignore lint/suspicious/noArrayIndexKey: see above
      <Fragment key={index}>{text}</Fragment>
    ) : (
      // biome-ignore lint/suspicious/noArrayIndexKey: see above
      <span key={index} translate="no">
        {names[name]}
      </span>
    );
  });
}
