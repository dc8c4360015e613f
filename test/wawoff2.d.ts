declare module 'wawoff2' {
  /** A TrueType or OpenType font packed as WOFF2. */
  export function compress(font: Uint8Array): Promise<Uint8Array>;
}
