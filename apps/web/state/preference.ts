import { useCallback, useEffect, useState } from 'react';
import type { Json } from '../../../src/files/index.ts';
import { useWorld } from '../world.ts';

/**
 * What this person prefers, kept under a name for all layouts, and how it is preferred otherwise; `null`: nothing was
 * kept yet, or what was kept is nothing that `known` knows.
 *
 * `known` is the same function at every call.
 */
export function usePreference<Value extends Json>(
  name: string,
  known: (kept: Json) => Value | null,
): readonly [Value | null, (value: Value) => void] {
  const { shelf } = useWorld();
  const [value, setValue] = useState<Value | null>(null);
  useEffect(() => {
    shelf.preference(name).then(
      (kept) => {
        const found = kept === undefined ? null : known(kept);
        // What was chosen while it was looked for holds.
        setValue((chosen) => chosen ?? found);
      },
      // Then nothing is preferred.
      () => {},
    );
  }, [shelf, name, known]);
  const prefer = useCallback(
    (preferred: Value) => {
      setValue(preferred);
      // What cannot be kept holds as long as it is looked at.
      shelf.prefer(name, preferred).catch(() => {});
    },
    [shelf, name],
  );
  return [value, prefer];
}
