import { type ReactNode, useEffect, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import type { Edit } from '../../../../src/editing/index.ts';
import { ClosedBlank } from '../../form/blank.tsx';
import { useFill } from '../../form/fill.ts';
import { useOpening } from '../../form/sentence.tsx';
import { useMessages } from '../../messages/messages.ts';

interface ColourBlankProps {
  readonly name: string;
  readonly label: string;
  /** `#rrggbb`; `null`: not known. */
  readonly value: string | null;
  /** The paper in that colour, with its hatch. */
  readonly swatch: ReactNode;
  /** `undefined`: not known. */
  readonly editOf: (colour: string | undefined) => Edit;
}

/** A blank for the colour of a paper, which is shown with the hatch that the paper has whatever its colour. */
export function ColourBlank(props: ColourBlankProps): ReactNode {
  const { papers } = useMessages();
  const { open } = useOpening();
  const { name, label, value, swatch } = props;
  return (
    <>
      <ClosedBlank name={name} label={label}>
        {value === null ? papers.noColour : <span className="shown-colour">{swatch}</span>}
        {value === null ? null : <span className="unseen">{papers.colourShown}</span>}
      </ClosedBlank>
      {open === name ? <OpenColour {...props} /> : null}
    </>
  );
}

function OpenColour({ label, value, swatch, editOf }: ColourBlankProps): ReactNode {
  const { form, papers } = useMessages();
  const { below, setOpen } = useOpening();
  const fill = useFill<string | undefined>(value ?? undefined, { editOf });
  const [wrong, setWrong] = useState<string | null>(null);
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (below !== null) input.current?.focus();
  }, [below]);
  if (below === null) return null;
  return createPortal(
    <fieldset
      className="opened choose-colour"
      aria-label={label}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        fill.takeBack();
        event.preventDefault();
        setOpen(null);
      }}
    >
      <label>
        <span>{papers.chooseColour}</span>{' '}
        <input
          ref={input}
          type="color"
          value={value ?? '#ffffff'}
          onChange={(event) => setWrong(fill.set(event.currentTarget.value))}
        />
      </label>
      {swatch}
      <p className="wrong" role="alert" lang="en">
        {wrong}
      </p>
      <p className="hint">{papers.hints.colour}</p>
      <div className="steps">
        <button
          type="button"
          className="say"
          onClick={() => {
            fill.set(undefined);
            setOpen(null);
          }}
        >
          {papers.forgetColour}
        </button>
        <button type="button" className="say done" onClick={() => setOpen(null)}>
          {form.done}
        </button>
      </div>
    </fieldset>,
    below,
  );
}
