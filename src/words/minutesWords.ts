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

/** A time of work as it is told: to the second below ten minutes, else in whole minutes begun. */
export function lastsWords(seconds: number): string {
  if (seconds >= 600) return minutesWords(Math.ceil(seconds / 60));
  const [minutes, rest] = [Math.floor(seconds / 60), Math.round(seconds % 60)];
  return [
    ...(minutes === 0 ? [] : [counted(minutes, 'minute')]),
    ...(rest === 0 && minutes > 0 ? [] : [counted(rest, 'second')]),
  ].join(' ');
}
