/** IPP messages from octets (RFC 8010 §3). What comes over the network is checked at every step. */
import {
  type AttributeGroup,
  endOfAttributes,
  type IppMessage,
  type IppValue,
  type TextKind,
  textTags,
  valueTags,
} from './ipp-message.ts';

/** The octets are not a message of the protocol. */
export class IppSyntaxError extends Error {
  override readonly name = 'IppSyntaxError';
}

/** Tags up to this one delimit groups; the others are values (RFC 8010 §3.5). */
const lastDelimiter = 0x0f;

/** Deeper than any registered attribute nests. */
const deepestCollection = 8;

const textKinds = new Map<number, TextKind>(
  Object.entries(textTags).map(([kind, tag]) => [tag, kind as TextKind]),
);

/** Throws `IppSyntaxError`. */
export const decodeIpp = (octets: Uint8Array): IppMessage => {
  const reader = new Reader(octets);
  const version = [reader.byte(), reader.byte()] as const;
  const code = reader.uint16();
  const requestId = reader.int32();
  const groups: AttributeGroup[] = [];
  for (let tag = reader.byte(); tag !== endOfAttributes; tag = reader.byte()) {
    if (tag === 0 || tag > lastDelimiter) throw new IppSyntaxError(`${tag} begins no group.`);
    groups.push({ tag, attributes: readAttributes(reader) });
  }
  return { version, code, requestId, groups, data: reader.rest() };
};

/** Of two attributes with one name, which no printer should send, the first counts. */
const readAttributes = (reader: Reader): Map<string, IppValue[]> => {
  const attributes = new Map<string, IppValue[]>();
  let values: IppValue[] | undefined;
  while (reader.peek() > lastDelimiter) {
    const tag = reader.byte();
    const name = reader.counted().toString();
    if (name !== '') {
      values = [];
      if (!attributes.has(name)) attributes.set(name, values);
    }
    if (values === undefined) throw new IppSyntaxError('A value before the first name.');
    values.push(readValue(reader, tag, 0));
  }
  return attributes;
};

const readValue = (reader: Reader, tag: number, depth: number): IppValue => {
  const value = new Reader(reader.counted());
  const textKind = textKinds.get(tag);
  if (textKind !== undefined) return { kind: textKind, value: value.rest().toString() };
  switch (tag) {
    case valueTags.integer:
      return { kind: 'integer', value: value.int32() };
    case valueTags.enum:
      return { kind: 'enum', value: value.int32() };
    case valueTags.boolean:
      return { kind: 'boolean', value: value.byte() !== 0 };
    case valueTags.rangeOfInteger:
      return { kind: 'rangeOfInteger', lower: value.int32(), upper: value.int32() };
    case valueTags.resolution:
      return {
        kind: 'resolution',
        crossFeed: value.int32(),
        feed: value.int32(),
        unit: value.byte() === 4 ? 'dpcm' : 'dpi',
      };
    case valueTags.textWithLanguage:
    case valueTags.nameWithLanguage:
      return {
        kind: tag === valueTags.textWithLanguage ? 'textWithLanguage' : 'nameWithLanguage',
        language: value.counted().toString(),
        value: value.counted().toString(),
      };
    case valueTags.begCollection:
      return { kind: 'collection', members: readMembers(reader, depth + 1) };
    default:
      return { kind: 'octets', tag, value: new Uint8Array(value.rest()) };
  }
};

const readMembers = (reader: Reader, depth: number): Map<string, IppValue[]> => {
  if (depth > deepestCollection) throw new IppSyntaxError('Collections nested too deep.');
  const members = new Map<string, IppValue[]>();
  let values: IppValue[] | undefined;
  for (;;) {
    const tag = reader.byte();
    if (reader.counted().length > 0) throw new IppSyntaxError('A named value inside a collection.');
    if (tag === valueTags.endCollection) {
      reader.counted();
      return members;
    }
    if (tag === valueTags.memberAttrName) {
      values = [];
      members.set(reader.counted().toString(), values);
    } else if (values === undefined) {
      throw new IppSyntaxError('A value before the first member of a collection.');
    } else {
      values.push(readValue(reader, tag, depth));
    }
  }
};

/** Reads from the front; throws `IppSyntaxError` where the octets end too early. */
class Reader {
  readonly #octets: Buffer;
  #at = 0;

  constructor(octets: Uint8Array) {
    this.#octets = Buffer.from(octets.buffer, octets.byteOffset, octets.byteLength);
  }

  #take(length: number): Buffer {
    if (this.#at + length > this.#octets.length) throw new IppSyntaxError('The message ends too early.');
    const taken = this.#octets.subarray(this.#at, this.#at + length);
    this.#at += length;
    return taken;
  }

  byte(): number {
    return this.#take(1).readUInt8();
  }

  peek(): number {
    const byte = this.byte();
    this.#at -= 1;
    return byte;
  }

  uint16(): number {
    return this.#take(2).readUInt16BE();
  }

  int32(): number {
    return this.#take(4).readInt32BE();
  }

  counted(): Buffer {
    return this.#take(this.uint16());
  }

  rest(): Buffer {
    return this.#take(this.#octets.length - this.#at);
  }
}
