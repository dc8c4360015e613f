import { type ReactNode, useEffect, useId, useRef } from 'react';
import { createPortal } from 'react-dom';
import { useMessages } from '../messages/messages.ts';
import { useOpening } from './sentence.tsx';

/** A blank of a sentence while it is closed: what stands in it, underscored. A tap opens it. */
export function ClosedBlank({
  name,
  label,
  children,
  own = false,
}: {
  /** Tells it from the other blanks of its sentence. */
  readonly name: string;
  /** What it is for, for those who listen. */
  readonly label: string;
  readonly children: ReactNode;
  /** Whether what stands there is the person's own words. */
  readonly own?: boolean;
}): ReactNode {
  const { open, setOpen } = useOpening();
  const button = useRef<HTMLButtonElement>(null);
  const wasOpen = useRef(false);
  useEffect(() => {
    // Whoever closes a blank goes on where it stands.
    if (wasOpen.current && open === null) button.current?.focus();
    wasOpen.current = open === name;
  }, [open, name]);
  return (
    <button
      ref={button}
      type="button"
      className="blank"
      aria-expanded={open === name}
      onClick={() => setOpen(open === name ? null : name)}
    >
      <span className="unseen">{label}: </span>
      <span className="filled" translate={own ? 'no' : undefined}>
        <span>{children}</span>
      </span>
    </button>
  );
}

/** A blank that is typed into: what was typed so far, what it opens onto below, and what is wrong with it. */
export function TypedBlank({
  name,
  label,
  text,
  hint,
  wrong,
  inputMode = 'text',
  onText,
  onArrow,
  onClose,
  children,
}: {
  readonly name: string;
  readonly label: string;
  readonly text: string;
  readonly hint: string;
  /** What is wrong with the text, in a sentence; `null`: nothing. */
  readonly wrong: string | null;
  readonly inputMode?: 'text' | 'numeric';
  readonly onText: (text: string) => void;
  /** An arrow key: one up or one down. */
  readonly onArrow?: (by: 1 | -1) => void;
  /** Enter, Escape or going elsewhere. */
  readonly onClose: (how: 'done' | 'taken back') => void;
  readonly children?: ReactNode;
}): ReactNode {
  const { setOpen, below } = useOpening();
  const input = useRef<HTMLInputElement>(null);
  const whole = useRef<HTMLFieldSetElement>(null);
  const id = useId();
  useEffect(() => {
    input.current?.focus();
    input.current?.select();
  }, []);
  const close = (how: 'done' | 'taken back') => {
    onClose(how);
    setOpen(null);
  };
  const leftFor = (to: EventTarget | null) => {
    // Going to what it opens onto is not going elsewhere; a tap on nothing leaves it open, so that nothing jumps.
    if (to === null || (to instanceof Node && (whole.current?.contains(to) || to === input.current))) return;
    onClose('done');
    // Another blank that was tapped opens by itself.
    setOpen(null);
  };
  return (
    <>
      <input
        ref={input}
        className="blank-input"
        aria-label={label}
        aria-describedby={`${id}-hint ${id}-wrong`}
        aria-invalid={wrong !== null}
        value={text}
        size={Math.max(4, Math.min(40, text.length + 1))}
        inputMode={inputMode}
        autoComplete="off"
        spellCheck={false}
        data-blank={name}
        onChange={(event) => onText(event.currentTarget.value)}
        onBlur={(event) => leftFor(event.relatedTarget)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') close('done');
          else if (event.key === 'Escape') close('taken back');
          else if (onArrow !== undefined && (event.key === 'ArrowUp' || event.key === 'ArrowDown'))
            onArrow(event.key === 'ArrowUp' ? 1 : -1);
          else return;
          event.preventDefault();
        }}
      />
      {below === null
        ? null
        : createPortal(
            <fieldset
              className="opened"
              ref={whole}
              aria-label={label}
              onBlur={(event) => leftFor(event.relatedTarget)}
            >
              <p className="wrong" id={`${id}-wrong`} role="alert" lang="en">
                {wrong}
              </p>
              {children}
              <p className="hint" id={`${id}-hint`}>
                {hint}
              </p>
              <DoneButton onDone={() => close('done')} />
            </fieldset>,
            below,
          )}
    </>
  );
}

function DoneButton({ onDone }: { readonly onDone: () => void }): ReactNode {
  const { form } = useMessages();
  return (
    <button type="button" className="say done" onClick={onDone}>
      {form.done}
    </button>
  );
}
