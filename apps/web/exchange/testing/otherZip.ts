/** Zips written and read another way than the page does: by the platform's own deflate, one file after another. */

export interface Packable {
  readonly name: string;
  readonly content: Uint8Array<ArrayBuffer>;
}

/** A zip of the files, the first as it is, the others deflated, with a remark at its end. */
export async function otherZip(files: readonly Packable[]): Promise<Uint8Array<ArrayBuffer>> {
  const parts: number[] = [];
  const directory: number[] = [];
  for (const [index, { name, content }] of files.entries()) {
    const method = index === 0 ? 0 : 8;
    const packed = method === 0 ? content : await through(content, new CompressionStream('deflate-raw'));
    const nameBytes = new TextEncoder().encode(name);
    const common = [
      ...[...two(20), ...two(0x800), ...two(method), ...two(0), ...two(0x21), ...four(sumOf(content))],
      ...[...four(packed.length), ...four(content.length), ...two(nameBytes.length), ...two(0)],
    ];
    directory.push(...four(0x02014b50), ...two(20), ...common, ...two(0), ...two(0), ...two(0), ...four(0));
    directory.push(...four(parts.length), ...nameBytes);
    parts.push(...four(0x04034b50), ...common, ...nameBytes, ...packed);
  }
  const remark = new TextEncoder().encode('A remark');
  const end = [
    ...[...four(0x06054b50), ...two(0), ...two(0), ...two(files.length), ...two(files.length)],
    ...[...four(directory.length), ...four(parts.length), ...two(remark.length), ...remark],
  ];
  return Uint8Array.from([...parts, ...directory, ...end]);
}

/** The files of a zip, its check sums held to what is in it. */
export async function otherUnzip(zip: Uint8Array<ArrayBuffer>): Promise<ReadonlyMap<string, string>> {
  const number = (at: number, count: number) =>
    [...zip.subarray(at, at + count)].reduceRight((value, byte) => value * 256 + byte, 0);
  const signatures = [...zip.keys()].filter((at) => number(at, 4) === 0x02014b50);
  const files = new Map<string, string>();
  for (const at of signatures) {
    const nameLength = number(at + 28, 2);
    const name = new TextDecoder().decode(zip.subarray(at + 46, at + 46 + nameLength));
    const local = number(at + 42, 4);
    const start = local + 30 + number(local + 26, 2) + number(local + 28, 2);
    const content = await through(
      zip.slice(start, start + number(at + 20, 4)),
      new DecompressionStream('deflate-raw'),
    );
    if (sumOf(content) !== number(at + 16, 4)) throw new Error(`${name} is damaged`);
    files.set(name, new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(content));
  }
  return files;
}

async function through(
  content: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
): Promise<Uint8Array<ArrayBuffer>> {
  const out = new Blob([content]).stream().pipeThrough(stream);
  return new Uint8Array(await new Response(out).arrayBuffer());
}

const two = (value: number) => [value & 255, (value >>> 8) & 255];
const four = (value: number) => [...two(value), ...two(value >>> 16)];

/** CRC-32, bit by bit. */
function sumOf(content: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of content) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit += 1) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return ~sum >>> 0;
}
