import { inflateSync, strToU8, Zip, ZipDeflate } from 'fflate';

/** A file in a zip. */
export interface ZipEntry {
  readonly name: string;
  readonly text: string;
}

/** Why the bytes are no zip that can be read; `name` is the file in it that is wrong. */
export type ZipProblem =
  /** It does not end as a zip does. */
  | { readonly kind: 'not a zip' }
  /** What is in it is more than a page can hold: so many bytes. */
  | { readonly kind: 'too large'; readonly bytes: number }
  /** A file in it is damaged, or packed in a way that is not read here. */
  | { readonly kind: 'damaged'; readonly name: string };

/** The most that is unpacked, in bytes: more than any shelf comes to, and less than a page can hold. */
const mostBytes = 200_000_000;

/** A free moment for the page between two pieces of work. */
const pause = () => new Promise<void>((resolve) => setTimeout(resolve, 0));

/** A zip of the files, in their order. The same files give the same bytes, whenever and wherever it is made. */
export async function zipped(entries: readonly ZipEntry[]): Promise<Uint8Array<ArrayBuffer>> {
  const chunks: Uint8Array[] = [];
  let failed: Error | null = null;
  const zip = new Zip((problem, chunk) => {
    if (problem) failed = problem;
    else chunks.push(chunk);
  });
  for (const { name, text } of entries) {
    const file = new ZipDeflate(name, { level: 6 });
    // A zip holds a time without saying of which zone, and none before 1980.
    file.mtime = new Date(1980, 0, 1);
    zip.add(file);
    file.push(strToU8(text), true);
    await pause();
  }
  zip.end();
  if (failed !== null) throw failed;
  return joined(chunks);
}

function joined(chunks: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(chunks.reduce((total, { length }) => total + length, 0));
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

/**
 * The files of a zip whose names `isWanted`, as UTF-8 text, by its directory; each is held to its check sum. Read as
 * PKWARE's APPNOTE 6.3 lays it out: sections 4.3.7, 4.3.12, 4.3.16.
 */
export async function unzipped(
  bytes: Uint8Array<ArrayBuffer>,
  isWanted: (name: string) => boolean,
): Promise<{ readonly entries: readonly ZipEntry[] } | { readonly problem: ZipProblem }> {
  const directory = directoryOf(bytes);
  if (directory === null) return { problem: { kind: 'not a zip' } };
  const wanted = directory.filter(({ name }) => isWanted(name));
  const total = wanted.reduce((sum, { size }) => sum + size, 0);
  if (total > mostBytes) return { problem: { kind: 'too large', bytes: total } };
  const entries: ZipEntry[] = [];
  for (const packed of wanted) {
    const text = unpacked(bytes, packed);
    if (text === null) return { problem: { kind: 'damaged', name: packed.name } };
    entries.push({ name: packed.name, text });
    await pause();
  }
  return { entries };
}

interface Packed {
  readonly name: string;
  /** 0: as it is, 8: deflated. */
  readonly method: number;
  readonly checkSum: number;
  readonly packedSize: number;
  readonly size: number;
  readonly at: number;
}

const endSignature = 0x06054b50;
const entrySignature = 0x02014b50;
const fileSignature = 0x04034b50;

/** What the zip says is in it; `null`: it is none, or its directory is damaged. */
function directoryOf(bytes: Uint8Array<ArrayBuffer>): readonly Packed[] | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  // The end of the directory is the last thing, but for a remark of up to 65 535 bytes.
  let end = bytes.length - 22;
  while (end >= 0 && end > bytes.length - 22 - 65_536 && view.getUint32(end, true) !== endSignature) end -= 1;
  if (end < 0 || view.getUint32(end, true) !== endSignature) return null;
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  const found: Packed[] = [];
  for (let index = 0; index < count; index += 1) {
    if (at + 46 > end || view.getUint32(at, true) !== entrySignature) return null;
    const nameLength = view.getUint16(at + 28, true);
    const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength));
    found.push({
      name,
      method: view.getUint16(at + 10, true),
      checkSum: view.getUint32(at + 16, true),
      packedSize: view.getUint32(at + 20, true),
      size: view.getUint32(at + 24, true),
      at: view.getUint32(at + 42, true),
    });
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return found;
}

function unpacked(bytes: Uint8Array<ArrayBuffer>, packed: Packed): string | null {
  const { method, checkSum, packedSize, size, at } = packed;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (at + 30 > bytes.length || view.getUint32(at, true) !== fileSignature) return null;
  const start = at + 30 + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
  const data = bytes.subarray(start, start + packedSize);
  if (data.length !== packedSize || (method !== 0 && method !== 8)) return null;
  try {
    // Never more than the directory says, whatever the data would come to.
    const content = method === 0 ? data : inflateSync(data, { out: new Uint8Array(size) });
    if (content.length !== size || checkSumOf(content) !== checkSum) return null;
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(content);
  } catch {
    // It is no deflated data, or no text.
    return null;
  }
}

/** CRC-32 as zips have it: the polynomial of ISO/IEC 8802-3, reflected. */
function checkSumOf(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = checkTable[(sum ^ byte) & 0xff]! ^ (sum >>> 8);
  return (sum ^ 0xffffffff) >>> 0;
}

const checkTable = Uint32Array.from({ length: 256 }, (_, index) => {
  let value = index;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});
