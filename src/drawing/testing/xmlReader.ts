/** An element as read back: its name, attributes, child elements and the text that stands right in it. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly XmlElement[];
  readonly text: string;
}

/**
 * Reads the XML that a strict parser would take, without document types: one root, every element closed in order,
 * attributes quoted and named once, only the five predefined entities, only characters of XML 1.0. Throws otherwise.
 */
export function readXml(source: string): XmlElement {
  if (/[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/u.test(source)) {
    throw new Error('A character that XML cannot hold');
  }
  const body = source.replace(/^<\?xml version="1\.0" encoding="UTF-8"\?>\n/, '');
  interface Open {
    name: string;
    attributes: Record<string, string>;
    children: XmlElement[];
    text: string;
  }
  const top: Open = { name: '', attributes: {}, children: [], text: '' };
  const open: Open[] = [top];
  let at = 0;
  const token =
    /<\/([A-Za-z][\w:.-]*)>|<([A-Za-z][\w:.-]*)((?:\s+[A-Za-z][\w:.-]*="[^"<]*")*)\s*(\/?)>|([^<]+)/gy;
  while (at < body.length) {
    token.lastIndex = at;
    const found = token.exec(body);
    if (found === null) throw new Error(`Not well formed at ${JSON.stringify(body.slice(at, at + 60))}`);
    at = token.lastIndex;
    const current = open.at(-1)!;
    const [, closes, opens, attributes, alone, text] = found;
    if (text !== undefined) {
      current.text += plain(text);
    } else if (closes !== undefined) {
      if (current.name !== closes || open.length === 1)
        throw new Error(`</${closes}> closes ${current.name}`);
      open.pop();
    } else {
      const element: Open = { name: opens!, attributes: attributesOf(attributes!), children: [], text: '' };
      current.children.push(element);
      if (alone === '') open.push(element);
    }
  }
  if (open.length !== 1 || top.children.length !== 1 || top.text.trim() !== '') throw new Error('One root');
  return top.children[0]!;
}

/** The element and everything in it, in order. */
export function allOf(element: XmlElement): readonly XmlElement[] {
  return [element, ...element.children.flatMap(allOf)];
}

function attributesOf(source: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const [, name, value] of source.matchAll(/([A-Za-z][\w:.-]*)="([^"]*)"/g)) {
    if (Object.hasOwn(found, name!)) throw new Error(`Attribute ${name} twice`);
    found[name!] = plain(value!);
  }
  return found;
}

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

function plain(source: string): string {
  return source.replace(/&([^;]*);?/g, (whole, name: string) => {
    const character = entities[name];
    if (character === undefined || !whole.endsWith(';')) throw new Error(`Entity ${whole}`);
    return character;
  });
}
