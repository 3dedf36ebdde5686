/** IPP messages as values: groups of named attributes, and the registered numbers that they carry. */

/** Source: RFC 8010 §3.5.1. */
export const groupTags = { operation: 0x01, job: 0x02, printer: 0x04, unsupported: 0x05 } as const;
export const endOfAttributes = 0x03;

/** Value tags of those syntaxes that hold plain text. Source: RFC 8010 §3.5.2. */
export const textTags = {
  textWithoutLanguage: 0x41,
  nameWithoutLanguage: 0x42,
  keyword: 0x44,
  uri: 0x45,
  uriScheme: 0x46,
  charset: 0x47,
  naturalLanguage: 0x48,
  mimeMediaType: 0x49,
  memberAttrName: 0x4a,
} as const;

/** Source: RFC 8010 §3.5.2. */
export const valueTags = {
  ...textTags,
  integer: 0x21,
  boolean: 0x22,
  enum: 0x23,
  resolution: 0x32,
  rangeOfInteger: 0x33,
  begCollection: 0x34,
  textWithLanguage: 0x35,
  nameWithLanguage: 0x36,
  endCollection: 0x37,
} as const;

export type TextKind = keyof typeof textTags;

export type IppValue =
  | { readonly kind: 'integer' | 'enum'; readonly value: number }
  | { readonly kind: 'boolean'; readonly value: boolean }
  | { readonly kind: TextKind; readonly value: string }
  | {
      readonly kind: 'textWithLanguage' | 'nameWithLanguage';
      readonly language: string;
      readonly value: string;
    }
  | { readonly kind: 'rangeOfInteger'; readonly lower: number; readonly upper: number }
  | {
      readonly kind: 'resolution';
      readonly crossFeed: number;
      readonly feed: number;
      readonly unit: 'dpi' | 'dpcm';
    }
  | { readonly kind: 'collection'; readonly members: Attributes }
  /** `octetString`, `dateTime`, the out-of-band values (`unsupported`, `unknown`, `no-value`), and what is not known here. */
  | { readonly kind: 'octets'; readonly tag: number; readonly value: Uint8Array };

/** In the order in which they are sent. */
export type Attributes = ReadonlyMap<string, readonly IppValue[]>;

export interface AttributeGroup {
  readonly tag: number;
  readonly attributes: Attributes;
}

export interface IppMessage {
  readonly version: readonly [major: number, minor: number];
  /** The operation of a request, the status of a response. */
  readonly code: number;
  readonly requestId: number;
  readonly groups: readonly AttributeGroup[];
  /** The document after the attributes; empty where there is none. */
  readonly data: Uint8Array;
}

/** Source: RFC 8011 §5.4.15. */
export const operations = {
  printJob: 0x0002,
  validateJob: 0x0004,
  createJob: 0x0005,
  sendDocument: 0x0006,
  cancelJob: 0x0008,
  getJobAttributes: 0x0009,
  getPrinterAttributes: 0x000b,
} as const;

/** Source: RFC 8011 Appendix B. */
export const statusCodes = {
  ok: 0x0000,
  okIgnoredOrSubstituted: 0x0001,
  okConflicting: 0x0002,
  badRequest: 0x0400,
  forbidden: 0x0401,
  notAuthenticated: 0x0402,
  notAuthorized: 0x0403,
  notPossible: 0x0404,
  timeout: 0x0405,
  notFound: 0x0406,
  requestEntityTooLarge: 0x0408,
  documentFormatNotSupported: 0x040a,
  attributesOrValuesNotSupported: 0x040b,
  documentFormatError: 0x0411,
  operationNotSupported: 0x0501,
  serviceUnavailable: 0x0502,
  versionNotSupported: 0x0503,
  deviceError: 0x0504,
  temporaryError: 0x0505,
  notAcceptingJobs: 0x0506,
  busy: 0x0507,
} as const;

export const isOk = (code: number): boolean => code < 0x0100;

/** The attributes of the first group of that kind; none where it is absent. */
export const groupOf = (message: IppMessage, tag: number): Attributes =>
  message.groups.find((group) => group.tag === tag)?.attributes ?? new Map();

/** Every text of an attribute, whatever its text syntax; octets and numbers are left out. */
export const textsOf = (attributes: Attributes, name: string): string[] =>
  (attributes.get(name) ?? []).flatMap((value) =>
    'value' in value && typeof value.value === 'string' ? [value.value] : [],
  );

/** Every integer or enum of an attribute. */
export const numbersOf = (attributes: Attributes, name: string): number[] =>
  (attributes.get(name) ?? []).flatMap((value) =>
    value.kind === 'integer' || value.kind === 'enum' ? [value.value] : [],
  );

export const collectionsOf = (attributes: Attributes, name: string): Attributes[] =>
  (attributes.get(name) ?? []).flatMap((value) => (value.kind === 'collection' ? [value.members] : []));

export const attribute = (name: string, ...values: IppValue[]): readonly [string, readonly IppValue[]] => [
  name,
  values,
];

export const text = (kind: TextKind, value: string): IppValue => ({ kind, value });
export const integer = (value: number): IppValue => ({ kind: 'integer', value });
export const enumValue = (value: number): IppValue => ({ kind: 'enum', value });
export const boolean = (value: boolean): IppValue => ({ kind: 'boolean', value });
export const collection = (...members: readonly (readonly [string, readonly IppValue[]])[]): IppValue => ({
  kind: 'collection',
  members: new Map(members),
});
