import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodeIpp, IppSyntaxError } from '../../src/printing/ipp/ipp-decode.ts';
import { encodeIpp } from '../../src/printing/ipp/ipp-encode.ts';
import {
  attribute,
  boolean,
  collection,
  enumValue,
  groupTags,
  type IppMessage,
  type IppValue,
  integer,
  text,
} from '../../src/printing/ipp/ipp-message.ts';

/** Octets as the tables of the RFC give them: text in quotes is ASCII, the rest is hexadecimal. */
const octets = (table: string): Buffer =>
  Buffer.concat(
    [...table.matchAll(/'([^']*)'|([0-9a-f]+)/g)].map(([, ascii, hex]) =>
      ascii === undefined ? Buffer.from(hex!, 'hex') : Buffer.from(ascii),
    ),
  );

/** Source: RFC 8010 Appendix A.1, Print-Job Request. */
const printJobRequest = octets(`
  0101 0002 00000001
  01
  47 0012 'attributes-charset' 0005 'utf-8'
  48 001b 'attributes-natural-language' 0005 'en-us'
  45 000b 'printer-uri' 002c 'ipp://printer.example.com/ipp/print/pinetree'
  42 0008 'job-name' 0006 'foobar'
  22 0016 'ipp-attribute-fidelity' 0001 01
  02
  21 0006 'copies' 0004 00000014
  44 0005 'sides' 0013 'two-sided-long-edge'
  03 '%!PDF'`);

const printJobMessage: IppMessage = {
  version: [1, 1],
  code: 0x0002,
  requestId: 1,
  groups: [
    {
      tag: groupTags.operation,
      attributes: new Map([
        attribute('attributes-charset', text('charset', 'utf-8')),
        attribute('attributes-natural-language', text('naturalLanguage', 'en-us')),
        attribute('printer-uri', text('uri', 'ipp://printer.example.com/ipp/print/pinetree')),
        attribute('job-name', text('nameWithoutLanguage', 'foobar')),
        attribute('ipp-attribute-fidelity', boolean(true)),
      ]),
    },
    {
      tag: groupTags.job,
      attributes: new Map([
        attribute('copies', integer(20)),
        attribute('sides', text('keyword', 'two-sided-long-edge')),
      ]),
    },
  ],
  data: Buffer.from('%!PDF'),
};

/** Source: RFC 8010 Appendix A.4, Print-Job Response (Success with Attributes Ignored). */
const printJobResponse = octets(`
  0101 0001 00000001
  01
  47 0012 'attributes-charset' 0005 'utf-8'
  48 001b 'attributes-natural-language' 0005 'en-us'
  41 000e 'status-message' 002f 'successful-ok-ignored-or-substituted-attributes'
  05
  21 0006 'copies' 0004 00000014
  10 0005 'sides' 0000
  02
  21 0006 'job-id' 0004 00000093
  45 0007 'job-uri' 0030 'ipp://printer.example.com/ipp/print/pinetree/147'
  23 0009 'job-state' 0004 00000003
  03`);

/** The form of RFC 8010 §3.1.6: a collection in a collection, and of a name with two values only the first is named. */
const collectionRequest = octets(`
  0200 0005 00000007
  02
  34 0009 'media-col' 0000
  4a 0000 000a 'media-size'
  34 0000 0000
  4a 0000 000b 'x-dimension'
  21 0000 0004 00002710
  4a 0000 000b 'y-dimension'
  21 0000 0004 00001388
  37 0000 0000
  37 0000 0000
  44 0004 'word' 0003 'one'
  44 0000 0003 'two'
  03`);

const collectionMessage: IppMessage = {
  version: [2, 0],
  code: 0x0005,
  requestId: 7,
  groups: [
    {
      tag: groupTags.job,
      attributes: new Map([
        attribute(
          'media-col',
          collection(
            attribute(
              'media-size',
              collection(attribute('x-dimension', integer(10_000)), attribute('y-dimension', integer(5_000))),
            ),
          ),
        ),
        attribute('word', text('keyword', 'one'), text('keyword', 'two')),
      ]),
    },
  ],
  data: Buffer.alloc(0),
};

describe('IPP messages', () => {
  test('a Print-Job request is the octets of the RFC’s example', () => {
    expect(Buffer.from(encodeIpp(printJobMessage))).toEqual(printJobRequest);
  });

  test('the RFC’s example of a request is read', () => {
    expect(decodeIpp(printJobRequest)).toEqual(printJobMessage);
  });

  test('the RFC’s example of a response with ignored attributes is read', () => {
    const message = decodeIpp(printJobResponse);
    expect(message.code).toBe(0x0001);
    expect(message.groups.map((group) => group.tag)).toEqual([
      groupTags.operation,
      groupTags.unsupported,
      groupTags.job,
    ]);
    expect(message.groups[1]!.attributes).toEqual(
      new Map<string, IppValue[]>([
        ['copies', [integer(20)]],
        ['sides', [{ kind: 'octets', tag: 0x10, value: new Uint8Array() }]],
      ]),
    );
    expect(message.groups[2]!.attributes).toEqual(
      new Map([
        attribute('job-id', integer(147)),
        attribute('job-uri', text('uri', 'ipp://printer.example.com/ipp/print/pinetree/147')),
        attribute('job-state', enumValue(3)),
      ]),
    );
  });

  test('collections nest, and only the first of several values is named', () => {
    expect(Buffer.from(encodeIpp(collectionMessage))).toEqual(collectionRequest);
    expect(decodeIpp(collectionRequest)).toEqual(collectionMessage);
  });

  test('a message cut anywhere before its end is a syntax error, never half a message', () => {
    const attributesEnd = printJobRequest.length - '%!PDF'.length;
    for (const [whole, end] of [
      [printJobRequest, attributesEnd],
      [collectionRequest, collectionRequest.length],
    ] as const) {
      for (let length = 0; length < end; length += 1) {
        expect(() => decodeIpp(whole.subarray(0, length))).toThrow(IppSyntaxError);
      }
    }
  });

  test('octets from anywhere are read or refused, never a crash', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), fc.boolean(), (bytes, headed) => {
        const input = headed ? Buffer.concat([printJobRequest.subarray(0, 9), bytes]) : bytes;
        try {
          decodeIpp(input);
        } catch (error) {
          expect(error).toBeInstanceOf(IppSyntaxError);
        }
      }),
    );
  });

  test('collections nested without end are refused', () => {
    const opened = octets(`34 0001 'a' 0000 ${"4a 0000 0001 'b' 34 0000 0000 ".repeat(2_000)}`);
    const message = Buffer.concat([octets('0200 0005 00000007 02'), opened]);
    expect(() => decodeIpp(message)).toThrow(IppSyntaxError);
  });
});
