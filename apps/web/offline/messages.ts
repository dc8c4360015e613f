/**
 * What a page says to the worker that keeps builds. `which build`: asks for the name of its build, to be said to the
 * port that comes along. `take over`: it need not wait until the pages of the build before are closed. `here`: a page
 * is there and holds the lock of its build, so builds may be let go of that no page is of.
 */
export type SaidToWorker = 'which build' | 'take over' | 'here';

/** What the worker says to pages: the file for want of which the whole build was not taken. */
export interface NotTaken {
  readonly missing: string;
}
