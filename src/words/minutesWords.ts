import { counted } from './count.ts';

/** A time in whole minutes as it is told: `30 minutes`, `1 hour`, `1 hour 30 minutes`, `24 hours`. */
export function minutesWords(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  return [
    ...(hours === 0 ? [] : [counted(hours, 'hour')]),
    ...(rest === 0 && hours > 0 ? [] : [counted(rest, 'minute')]),
  ].join(' ');
}
