/** IPP messages to octets (RFC 8010 §3). */
import {
  type Attributes,
  endOfAttributes,
  type IppMessage,
  type IppValue,
  valueTags,
} from './ipp-message.ts';

export const encodeIpp = (message: IppMessage): Uint8Array => {
  const head = Buffer.alloc(8);
  head.writeUInt8(message.version[0], 0);
  head.writeUInt8(message.version[1], 1);
  head.writeUInt16BE(message.code, 2);
  head.writeInt32BE(message.requestId, 4);
  const groups = message.groups.flatMap((group) => [
    Buffer.of(group.tag),
    ...encodeAttributes(group.attributes),
  ]);
  return Buffer.concat([head, ...groups, Buffer.of(endOfAttributes), message.data]);
};

/** Of several values, only the first carries the name (RFC 8010 §3.1.5). */
const encodeAttributes = (attributes: Attributes): Buffer[] =>
  [...attributes].flatMap(([name, values]) =>
    values.flatMap((value, index) => encodeValue(index === 0 ? name : '', value)),
  );

const encodeValue = (name: string, value: IppValue): Buffer[] => {
  switch (value.kind) {
    case 'integer':
    case 'enum':
      return [field(valueTags[value.kind], name, integers(value.value))];
    case 'boolean':
      return [field(valueTags.boolean, name, Buffer.of(value.value ? 1 : 0))];
    case 'rangeOfInteger':
      return [field(valueTags.rangeOfInteger, name, integers(value.lower, value.upper))];
    case 'resolution': {
      const unit = Buffer.of(value.unit === 'dpi' ? 3 : 4);
      return [
        field(valueTags.resolution, name, Buffer.concat([integers(value.crossFeed, value.feed), unit])),
      ];
    }
    case 'textWithLanguage':
    case 'nameWithLanguage':
      return [
        field(valueTags[value.kind], name, Buffer.concat([counted(value.language), counted(value.value)])),
      ];
    case 'collection':
      return [
        field(valueTags.begCollection, name, Buffer.alloc(0)),
        ...encodeMembers(value.members),
        field(valueTags.endCollection, '', Buffer.alloc(0)),
      ];
    case 'octets':
      return [field(value.tag, name, Buffer.from(value.value))];
    default:
      return [field(valueTags[value.kind], name, Buffer.from(value.value))];
  }
};

/** The name of a member is a value of its own before its values (RFC 8010 §3.1.6). */
const encodeMembers = (members: Attributes): Buffer[] =>
  [...members].flatMap(([name, values]) => [
    field(valueTags.memberAttrName, '', Buffer.from(name)),
    ...values.flatMap((value) => encodeValue('', value)),
  ]);

const field = (tag: number, name: string, value: Buffer): Buffer =>
  Buffer.concat([Buffer.of(tag), counted(name), uint16(value.length), value]);

const counted = (content: string): Buffer => {
  const bytes = Buffer.from(content);
  return Buffer.concat([uint16(bytes.length), bytes]);
};

/** Throws a RangeError beyond 65,535, which no field of the protocol can hold. */
const uint16 = (value: number): Buffer => {
  const bytes = Buffer.alloc(2);
  bytes.writeUInt16BE(value);
  return bytes;
};

const integers = (...values: number[]): Buffer => {
  const bytes = Buffer.alloc(4 * values.length);
  values.forEach((value, index) => {
    bytes.writeInt32BE(value, 4 * index);
  });
  return bytes;
};
