/** The text that bytes are in UTF-8; `null`: they are none, for in another encoding the text would be another. */
export function utf8Text(bytes: Uint8Array<ArrayBuffer>): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
