import { useEffect, useState } from 'react';
import { useWorld } from '../../world.ts';

/** The moment it is, to the half minute; in milliseconds since 1970. */
export function useNow(): number {
  const { now } = useWorld();
  const [moment, setMoment] = useState(now);
  useEffect(() => {
    const beat = setInterval(() => setMoment(now()), 30_000);
    return () => clearInterval(beat);
  }, [now]);
  return moment;
}
