/** Every icon of the page by its file name, as the bytes of a PNG. */
export function drawnIcons(): Readonly<Record<string, Uint8Array>>;
