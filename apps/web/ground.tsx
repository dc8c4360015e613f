import { type ReactNode, useEffect } from 'react';
import type { Json } from '../../src/files/index.ts';
import { useMessages } from './messages/messages.ts';
import { usePreference } from './state/preference.ts';

const grounds = ['asDevice', 'light', 'dark'] as const;
type Ground = (typeof grounds)[number];

function knownGround(kept: Json): Ground | null {
  return grounds.find((each) => each === kept) ?? null;
}

/** Chooses what the page is printed on: cream, dark, or as the device has it. */
export function GroundChoice(): ReactNode {
  const { general } = useMessages();
  const [preferred, prefer] = usePreference('ground', knownGround);
  const ground = preferred ?? 'asDevice';
  useEffect(() => {
    const { dataset } = document.documentElement;
    if (ground === 'asDevice') delete dataset.ground;
    else dataset.ground = ground;
  }, [ground]);
  return (
    <fieldset className="ground">
      <legend>{general.ground.legend}</legend>
      {grounds.map((each) => (
        <label key={each}>
          <input type="radio" name="ground" checked={each === ground} onChange={() => prefer(each)} />
          {general.ground[each]}
        </label>
      ))}
    </fieldset>
  );
}
