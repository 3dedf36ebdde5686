/**
 * Messages of ISO/IEC 15434: `[)>` RS, then for each format its number, GS, its fields with GS between them, RS, and at the
 * end EOT. Format 05 holds GS1 elements, format 06 fields with data identifiers; macros 05 and 06 of Data Matrix read the same.
 */
import type { Identification, MarkingData } from '../domain/marking-data.ts';
import { isRefusal, type Refusal, refusal } from '../domain/refusal.ts';
import { EOT, firstUnseen, GS, nameOfCharacter, RS, shown } from './control-characters.ts';
import { canonicalFields, type Field, identifyByFields, readField } from './data-identifiers.ts';
import { canonicalGs1, type Gs1Element, withoutRepeats } from './gs1/element.ts';
import { readElementString } from './gs1/element-string.ts';
import { identifyByGs1 } from './gs1/identify.ts';

const header = '[)>';

/** True of a text that set out to be such a message, whatever has become of its separators. */
export const looksLikeTransferMessage = (text: string): boolean => text.startsWith(header);

export interface TransferMessage {
  readonly source: MarkingData['source'];
  readonly identification: Identification;
  readonly canonical: string;
}

export const readTransferMessage = (text: string, currentYear: number): TransferMessage | Refusal => {
  const formats = formatsOf(text);
  if (isRefusal(formats)) return formats;
  let elements: readonly Gs1Element[] = [];
  let fields: readonly Field[] = [];
  for (const format of formats) {
    const number = format.slice(0, 2);
    if (number === '05') {
      const read = readElementString(format.slice(3), currentYear);
      if (isRefusal(read)) return read;
      elements = [...elements, ...read];
    } else if (number === '06') {
      const read = readFields(format.slice(3));
      if (isRefusal(read)) return read;
      fields = [...fields, ...read];
    } else return refusal('transfer-format-not-read', { format: shown(number) });
  }
  return messageOf(elements, fields, currentYear);
};

/** The formats of a message, each with its number and the separator after that. */
const formatsOf = (text: string): readonly string[] | Refusal => {
  const body = text.slice(header.length);
  if (!body.startsWith(RS)) return refusal('transfer-separators-lost');
  const end = [RS + EOT, RS, EOT].find((mark) => body.length > 1 && body.endsWith(mark));
  if (end === undefined) return refusal('transfer-cut-off');
  const formats = body.slice(1, body.length - end.length).split(RS);
  return formats.every((format) => /^\d\d$/.test(format.slice(0, 2)) && format[2] === GS)
    ? formats
    : refusal('transfer-separators-lost');
};

const readFields = (text: string): readonly Field[] | Refusal => {
  const fields: Field[] = [];
  for (const part of text.split(GS).filter((each) => each !== '')) {
    const unseen = firstUnseen(part);
    if (unseen !== undefined)
      return refusal('scan-unseen-character', {
        character: nameOfCharacter(unseen.character),
        text: shown(part),
      });
    const field = readField(part);
    if (isRefusal(field)) return field;
    fields.push(field);
  }
  return fields;
};

const messageOf = (
  allElements: readonly Gs1Element[],
  allFields: readonly Field[],
  currentYear: number,
): TransferMessage | Refusal => {
  const elements = withoutRepeats(allElements);
  if (isRefusal(elements)) return elements;
  const fields = withoutRepeatedFields(allFields);
  if (isRefusal(fields)) return fields;
  if (elements.length + fields.length === 0) return refusal('transfer-empty');
  const byGs1 = identifyByGs1(elements, currentYear);
  const byFields = identifyByFields(fields);
  const differing = namesOf(byGs1).find(
    (name) => byFields[name] !== undefined && JSON.stringify(byFields[name]) !== JSON.stringify(byGs1[name]),
  );
  if (differing !== undefined)
    return refusal('scan-contradicts-itself', {
      element: `code: ${differing}`,
      first: textOf(byGs1[differing]),
      second: textOf(byFields[differing]),
    });
  return {
    source: elements.length > 0 ? 'ISO/IEC 15434 format 05' : 'ISO/IEC 15434 format 06',
    identification: { ...byFields, ...byGs1 },
    canonical: canonicalGs1(elements) + canonicalFields(fields),
  };
};

/** A serial number, a part number or a lot that a message gives twice, and not alike, says nothing. */
const withoutRepeatedFields = (fields: readonly Field[]): readonly Field[] | Refusal => {
  const distinct = new Map(fields.map((field) => [`${field.identifier}${field.value}`, field]));
  const single = new Map<string, string>();
  for (const { identifier, value } of distinct.values()) {
    const before = single.get(identifier);
    if (before !== undefined && ['S', '1P', '1T', '16D', '18S', '25S'].includes(identifier)) {
      return refusal('scan-contradicts-itself', {
        element: identifier,
        first: shown(before),
        second: shown(value),
      });
    }
    single.set(identifier, value);
  }
  return [...distinct.values()];
};

const namesOf = (identification: Identification) =>
  Object.keys(identification) as readonly (keyof Identification)[];

const textOf = (value: Identification[keyof Identification]): string =>
  typeof value === 'object' ? value.on : shown(value ?? '');
