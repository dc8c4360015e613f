import type { FileProblem } from './fileProblem.ts';
import { isList, isObject, type Json } from './json.ts';
import type { Path } from './path.ts';

/** How many problems of one file are told. */
export const mostProblems = 100;

/**
 * The problems in the order in which their fields stand in the file, missing fields before the others of their
 * object; beyond `mostProblems` one last problem says that there are more.
 */
export function inFileOrder(problems: readonly FileProblem[], file: Json, more: FileProblem): FileProblem[] {
  const places = placesIn(file);
  const sorted = problems
    .map((problem) => ({ problem, place: places(problem.path) }))
    .sort((a, b) => compared(a.place, b.place))
    .map(({ problem }) => problem);
  return sorted.length > mostProblems ? [...sorted.slice(0, mostProblems), more] : sorted;
}

/** A path as the place of each of its keys among its neighbours. */
function placesIn(file: Json): (path: Path) => number[] {
  // Each object's names are counted once, however many problems it has.
  const counted = new Map<Json, Map<string, number>>();
  return (path) => {
    const places: number[] = [];
    let value: Json | undefined = file;
    for (const key of path) {
      if (isObject(value)) {
        let names = counted.get(value);
        if (names === undefined) {
          names = new Map(Object.keys(value).map((name, index) => [name, index]));
          counted.set(value, names);
        }
        places.push(names.get(String(key)) ?? -1);
        value = value[key];
      } else if (isList(value) && typeof key === 'number') {
        places.push(key);
        value = value[key];
      } else break;
    }
    return places;
  };
}

function compared(a: readonly number[], b: readonly number[]): number {
  for (let index = 0; index < Math.min(a.length, b.length); index += 1) {
    const difference = (a[index] ?? 0) - (b[index] ?? 0);
    if (difference !== 0) return difference;
  }
  return a.length - b.length;
}
