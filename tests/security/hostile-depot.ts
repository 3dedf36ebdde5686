/** The invented depot, in which every text that a person can fill is filled with script, as the input schemas say where texts are. */
import { z } from 'zod';
import type { InputOf, OperationName, OutputOf } from '../../src/station/contract.ts';
import { contract } from '../../src/station/contract.ts';
import { heldDevices } from '../e2e/held-depot.ts';
import { badges, type PreparedDepot, prepareDepot } from '../e2e/prepared-depot.ts';
import type { Stage } from '../e2e/stage.ts';
import type { Visit } from '../e2e/visit.ts';

/** It begins as a formula, closes what it may stand in, and would say so where it ran. */
export const script = '"><img src=x onerror=window.ran=1>';
/** For fields that are too short for it. */
const shortScript = '<b id=ran>';

type JsonSchema = z.core.JSONSchema.JSONSchema;
type Path = readonly (string | number)[];

/** Where a person's own words stand in an input: texts of no form, which are no name of anything at the station. */
const wordsIn = (schema: JsonSchema, value: unknown, at: Path = []): readonly Path[] => {
  const branches = schema.anyOf ?? schema.oneOf;
  if (branches !== undefined) return branches.flatMap((each) => wordsIn(each as JsonSchema, value, at));
  if (typeof value === 'string') {
    const isFree = schema.type === 'string' && !schema.enum && !schema.pattern && !schema.format;
    return isFree ? [at] : [];
  }
  if (Array.isArray(value))
    return value.flatMap((each, index) => wordsIn((schema.items ?? {}) as JsonSchema, each, [...at, index]));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => {
    const inner = schema.properties?.[key] ?? schema.additionalProperties ?? {};
    return wordsIn(inner as JsonSchema, each, [...at, key]);
  });
};

const withWords = (value: unknown, [key, ...rest]: Path, more: string): unknown => {
  if (key === undefined) return `${String(value)}${more}`;
  if (Array.isArray(value))
    return value.map((each, index) => (index === key ? withWords(each, rest, more) : each));
  const held = value as Record<string, unknown>;
  return { ...held, [key]: withWords(held[String(key)], rest, more) };
};

/** Secrets and what a scanner says are no words; a made-up serial number is looked for by its own name. */
const isNoWord = (path: Path): boolean =>
  path.some((key) =>
    ['pin', 'newPin', 'badge', 'serial', 'code', 'printerId', 'lifelineDiameterMm'].includes(String(key)),
  );

export interface HostileDepot {
  readonly depot: PreparedDepot;
  /** `operation path`, for every text that was filled and taken. */
  readonly filled: ReadonlySet<string>;
}

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

const namesOf = (path: Path): string => path.filter((key) => typeof key === 'string').join('.');

/** Makes each call with script wherever that is taken, for whatever is refused changes nothing, and else as it is meant. */
const hostileCaller = (stage: Stage, filled: Set<string>) => {
  const taken = async (name: OperationName, input: unknown): Promise<unknown> =>
    stage.expectOutput(name, input as InputOf<typeof name>).catch(() => undefined);
  return async <Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> => {
    const operation = contract.get(name)!;
    const schema = z.toJSONSchema(operation.input, { io: 'input', unrepresentable: 'any' });
    const paths =
      operation.kind === 'command' ? wordsIn(schema, input).filter((path) => !isNoWord(path)) : [];
    for (const more of [script, shortScript])
      for (const chosen of choices(paths)) {
        const hostile = chosen.reduce<unknown>((value, path) => withWords(value, path, more), input);
        const output = await taken(name, hostile);
        if (output === undefined) continue;
        for (const path of chosen) filled.add(`${name} ${namesOf(path)}`);
        return output as OutputOf<Name>;
      }
    return stage.expectOutput(name, input);
  };
};

export const hostileDepot = async (stage: Stage): Promise<HostileDepot> => {
  const filled = new Set<string>();
  const call = hostileCaller(stage, filled);
  const depot = await prepareDepot({ ...stage, expectOutput: call });
  await stage.expectOutput('session.sign-in', { badge: badges.administrator });
  const page = {
    evaluate: (_work: unknown, { operation, input }: { operation: OperationName; input: never }) =>
      call(operation, input),
  };
  await heldDevices({ page } as unknown as Visit);
  const because = 'Known by now';
  const trainingValidUntil = '2027-01-31';
  await call('person.add', { name: 'Tove Lindqvist', badge: 'HOST-1', roles: ['inspector'] });
  await call('person.designate', {
    personId: 'P006',
    designation: {
      designatedBy: 'Head of depot',
      designatedOn: '2026-03-01',
      trainingValidUntil,
      document: 'D-1',
      trainingCourse: 'Course',
      trainedOn: '2026-02-01',
    },
  } as never);
  await call('person.change', { personId: 'P003', name: 'Ambrose Tallow', because } as never);
  await call('person.set-pin', { personId: 'P004', pin: '602214', because });
  await call('kit.save', { name: 'Gantry', code: 'KIT9', benchIds: ['GJQ81T5WX2'] } as never);
  await call('notice.record', {
    text: {
      manufacturer: 'Norvane',
      reference: 'N-1',
      issuedOn: '2026-03-01',
      title: 'Hooks',
      hazard: 'It may open.',
      action: 'Hold it.',
      models: ['Lode 2'],
    },
    pin: '271828',
  } as never).catch(() => undefined);
  for (const [index, name] of ['=1+1', '+1', '-1', '@SUM(1)', '=cmd|x'].entries()) {
    await stage.expectOutput('person.add', { name, badge: `FORMULA-${index}`, roles: ['user'] });
  }
  return { depot, filled };
};
