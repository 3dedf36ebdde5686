/** Makes calls with script in every text that a person can write, as the input schemas say where texts are. */
import { z } from 'zod';
import type { InputOf, OperationName, OutputOf } from '../../src/station/contract.ts';
import { contract } from '../../src/station/contract.ts';
import type { Stage } from '../e2e/stage.ts';
import type { Call } from './hostile-words.ts';

/** It begins as a formula, closes what it may stand in, and would say so where it ran. */
export const script = '"><img src=x onerror=window.ran=1>';
/** For fields that are too short for it. */
const shortScript = '<b id=ran>';

type JsonSchema = z.core.JSONSchema.JSONSchema;
type Path = readonly (string | number)[];

const isFreeText = ({ type, enum: choices, pattern, format }: JsonSchema): boolean =>
  type === 'string' && choices === undefined && pattern === undefined && format === undefined;

/** Where texts of no form stand in an input. */
const textsIn = (schema: JsonSchema, value: unknown, at: Path = []): readonly Path[] => {
  const branches = schema.anyOf ?? schema.oneOf;
  if (branches !== undefined) return branches.flatMap((each) => textsIn(each as JsonSchema, value, at));
  if (typeof value === 'string') return isFreeText(schema) ? [at] : [];
  if (Array.isArray(value))
    return value.flatMap((each, index) => textsIn((schema.items ?? {}) as JsonSchema, each, [...at, index]));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => {
    const inner = schema.properties?.[key] ?? schema.additionalProperties ?? {};
    return textsIn(inner as JsonSchema, each, [...at, key]);
  });
};

const withWords = (value: unknown, [key, ...rest]: Path, more: string): unknown => {
  if (key === undefined) return `${String(value)}${more}`;
  if (Array.isArray(value))
    return value.map((each, index) => (index === key ? withWords(each, rest, more) : each));
  const held = value as Record<string, unknown>;
  return { ...held, [key]: withWords(held[String(key)], rest, more) };
};

/** What texts of the contract are that nobody writes in words of their own, by the last names of their paths. */
const noWords: Readonly<Record<string, readonly string[]>> = {
  'a person of the station': [
    'personId',
    'userId',
    'toUserId',
    'lastUserId',
    'regularUserId',
    'handedOverBy',
    'answeredBy',
    'witness',
  ],
  'something of the station': ['benchId', 'modelSheetId', 'kitId', 'printerId', 'scope'],
  'something of the rules': ['check', 'defect', 'ground', 'question', 'choices', 'kind', 'for', 'key'],
  'what a scanner says (hostile-scans.test.ts)': ['badge', 'code', 'tag', 'text'],
  'a secret, shown nowhere': ['pin', 'newPin'],
  'a file, a folder or an address that must be there': [
    'file',
    'path',
    'folder',
    'backupFolder',
    'checkpointFolder',
    'sheet',
    'address',
    'certificateSha256',
  ],
  'a time zone': ['timeZone'],
  'too short for markup': ['currency'],
};
const namesOfNoWords = new Set(Object.values(noWords).flat());

/** The text of a marking is written, that of a scan is not. */
const isNoWord = (names: readonly string[]): boolean =>
  namesOfNoWords.has(names.at(-1) ?? '') && !(names.includes('marking') && names.at(-1) === 'text');

const namesIn = (path: Path): readonly string[] => path.filter((key) => typeof key === 'string');

/** `operation path`, for every text of a command that a person writes. */
export const writtenTexts = (): readonly string[] =>
  [...contract]
    .filter(([, { kind }]) => kind === 'command')
    .flatMap(([name, { input }]) =>
      freeTexts(z.toJSONSchema(input, { io: 'input', unrepresentable: 'any' }))
        .filter((names) => !isNoWord(names))
        .map((names) => `${name} ${names.join('.')}`),
    );

const freeTexts = (schema: JsonSchema, at: readonly string[] = []): readonly (readonly string[])[] => {
  const inner = [schema.anyOf, schema.oneOf, schema.items].flat().filter((each) => typeof each === 'object');
  return [
    ...(isFreeText(schema) && schema.const === undefined ? [at] : []),
    ...inner.flatMap((each) => freeTexts(each as JsonSchema, at)),
    ...Object.entries(schema.properties ?? {}).flatMap(([key, each]) =>
      freeTexts(each as JsonSchema, [...at, key]),
    ),
  ];
};

/** A text that stands in several branches of a union is one. */
const distinct = (paths: readonly Path[]): readonly Path[] => [
  ...new Map(paths.map((path) => [path.join('.'), path])).values(),
];

/** All of them, all but one, and each alone: what names something at the station cannot be filled without being refused. */
const choices = (paths: readonly Path[]): readonly (readonly Path[])[] =>
  paths.length === 0
    ? []
    : [
        paths,
        ...paths
          .map((without) => paths.filter((path) => path !== without))
          .filter(({ length }) => length > 1),
        ...paths.map((path) => [path]),
      ];

/** Makes each call with script wherever that is taken, for whatever is refused changes nothing, and else as it is meant. */
export const hostileCaller = (stage: Stage, filled: Set<string>): Call => {
  const taken = async (name: OperationName, input: unknown): Promise<unknown> =>
    stage.expectOutput(name, input as InputOf<typeof name>).catch(() => undefined);
  const call: Call = async (name, input) => {
    const operation = contract.get(name)!;
    const schema = z.toJSONSchema(operation.input, { io: 'input', unrepresentable: 'any' });
    // Held devices are looked for by their serial numbers.
    const isSought = JSON.stringify(input).includes('"HELD-');
    const paths =
      operation.kind === 'command'
        ? distinct(textsIn(schema, input)).filter(
            (path) => !isNoWord(namesIn(path)) && !(isSought && path.includes('serial')),
          )
        : [];
    for (const more of [script, shortScript])
      for (const chosen of choices(paths)) {
        const hostile = chosen.reduce<unknown>((value, path) => withWords(value, path, more), input);
        const output = await taken(name, hostile);
        if (output === undefined) continue;
        for (const path of chosen) filled.add(`${name} ${namesIn(path).join('.')}`);
        return output as OutputOf<typeof name>;
      }
    return stage.expectOutput(name, input);
  };
  return call;
};
