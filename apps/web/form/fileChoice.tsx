import { type ReactNode, useRef } from 'react';

/** A button that lets one file or several be chosen; the chooser itself looks otherwise in every browser and is not seen. */
export function FileChoice({
  says,
  accept,
  multiple = false,
  onChosen,
}: {
  readonly says: string;
  /** The kinds of file that are offered first, as `accept` of an input names them. */
  readonly accept: string;
  readonly multiple?: boolean;
  /** One file or more. */
  readonly onChosen: (files: readonly [File, ...File[]]) => void;
}): ReactNode {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <input
        ref={input}
        type="file"
        className="unseen"
        tabIndex={-1}
        aria-hidden="true"
        multiple={multiple}
        accept={accept}
        onChange={(event) => {
          const [first, ...others] = event.currentTarget.files ?? [];
          if (first !== undefined) onChosen([first, ...others]);
          // The same file can then be chosen again.
          event.currentTarget.value = '';
        }}
      />
      <button type="button" className="say" onClick={() => input.current?.click()}>
        {says}
      </button>
    </>
  );
}
