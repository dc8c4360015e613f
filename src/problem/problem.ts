/** An error would spoil the set or keep it from being planned; a caution is worth knowing before cutting. */
export type Severity = 'error' | 'caution';

/**
 * Something that is wrong with what the person gave, as data; `words` makes its sentence at the edge.
 *
 * `where` is the path of the field in the layout file (`parts[2].size[0]`), or `''` for the file as a whole.
 * `part` is the id of the part it is about, if there is one. `numbers` are the lengths (whole ticks) and
 * counts that the sentence shows; `names` are the texts it shows: what was found, ids, titles.
 */
export interface Problem<Code extends string = string> {
  readonly code: Code;
  readonly severity: Severity;
  readonly where: string;
  readonly part?: string;
  readonly numbers: Readonly<Record<string, number>>;
  readonly names: Readonly<Record<string, string>>;
}
