import { type ReactNode, useEffect, useState } from 'react';
import { useMessages } from './messages/messages.ts';
import { useWorld } from './world.ts';

const grounds = ['asDevice', 'light', 'dark'] as const;
type Ground = (typeof grounds)[number];

/** The name under which it is kept. */
const preference = 'ground';

/** Chooses what the page is printed on: cream, dark, or as the device has it. */
export function GroundChoice(): ReactNode {
  const { general } = useMessages();
  const { shelf } = useWorld();
  const [ground, setGround] = useState<Ground>('asDevice');
  useEffect(() => {
    void shelf.preference(preference).then((kept) => {
      const known = grounds.find((each) => each === kept);
      if (known !== undefined) setGround(known);
    });
  }, [shelf]);
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
          <input
            type="radio"
            name="ground"
            checked={each === ground}
            onChange={() => {
              setGround(each);
              void shelf.prefer(preference, each);
            }}
          />
          {general.ground[each]}
        </label>
      ))}
    </fieldset>
  );
}
