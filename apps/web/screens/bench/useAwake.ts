import { useEffect, useState } from 'react';

/** Keeps the screen on while the page is looked at, where the browser can; whether it does. */
export function useAwake(): boolean {
  const [isAwake, setAwake] = useState(false);
  useEffect(() => {
    // Pages over plain http have none.
    const { wakeLock } = navigator as Partial<Navigator>;
    if (wakeLock === undefined) return;
    let lock: WakeLockSentinel | null = null;
    let isOver = false;
    const ask = async () => {
      if (document.visibilityState !== 'visible') return;
      try {
        const held = await wakeLock.request('screen');
        if (isOver) {
          await held.release();
          return;
        }
        lock = held;
        setAwake(true);
        // A page that is not looked at loses it.
        held.addEventListener('release', () => setAwake(false));
      } catch {
        setAwake(false);
      }
    };
    const seen = () => void ask();
    seen();
    document.addEventListener('visibilitychange', seen);
    return () => {
      isOver = true;
      document.removeEventListener('visibilitychange', seen);
      void lock?.release();
    };
  }, []);
  return isAwake;
}
