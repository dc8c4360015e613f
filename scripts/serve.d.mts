/** What is served: a folder of built files, from a port (0: any free one) of a host of this machine. */
export function serve(from: {
  readonly folder: string;
  readonly port: number;
  readonly host: string;
}): Promise<{ readonly addresses: readonly string[]; close(): Promise<void> }>;
