/** Random inputs of an operation: such as its schema describes, and such as nobody foresaw. */
import fc from 'fast-check';
import { z } from 'zod';

type JsonSchema = z.core.JSONSchema.JSONSchema;

/** What breaks programs that trust their input. */
export const hostileTexts: readonly string[] = [
  '',
  ' ',
  '\u0000',
  '\ud800',
  '\u202etxt.exe',
  "'; drop table event; --",
  '<script>throw 1</script>',
  '<img src=x onerror=throw%201>',
  '=HYPERLINK("http://example.com","x")',
  '{{constructor}}',
  '$t(nested)',
  '%s%n',
  '../../../../etc/passwd',
  '..\\..\\windows',
  '__proto__',
  'constructor',
  'NaN',
  '-1',
  '1e309',
  '2026-02-30',
  '9999-12-31',
  '0000-00-00',
  'a'.repeat(5000),
  '\u0301'.repeat(50),
  'ﷺ😀',
];

const hostileValues: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom<unknown>(null, true, 0, -1, 0.5, 2 ** 53, -1e308, [], {}, [[[[]]]]),
  fc.constantFrom(...hostileTexts),
  fc.jsonValue(),
);

/** `known` are texts that mean something at the station that is asked: IDs, badges, days. */
export const randomInputs = (input: z.ZodType, known: readonly string[]): fc.Arbitrary<unknown> => {
  const schema = z.toJSONSchema(input, { io: 'input', unrepresentable: 'any' });
  return fc.oneof(
    { weight: 8, arbitrary: valuesOf(schema, known) },
    { weight: 1, arbitrary: withStrangeKeys(valuesOf(schema, known)) },
    { weight: 1, arbitrary: hostileValues },
  );
};

/** As a parsed JSON text has them, `__proto__` as a key of its own among them. */
const withStrangeKeys = (values: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> =>
  fc
    .tuple(values, fc.constantFrom('__proto__', 'constructor', 'toString', 'person', 'roles'), hostileValues)
    .map(([value, key, strange]): unknown =>
      typeof value === 'object' && value !== null && !Array.isArray(value)
        ? Object.defineProperty({ ...value }, key, { value: strange, enumerable: true })
        : value,
    );

const valuesOf = (schema: JsonSchema, known: readonly string[]): fc.Arbitrary<unknown> => {
  const branches = schema.oneOf ?? schema.anyOf;
  if (branches !== undefined) return fc.oneof(...branches.map((each) => valuesOf(asSchema(each), known)));
  const foreseen = foreseenOf(schema, known);
  return foreseen === undefined
    ? fc.jsonValue()
    : fc.oneof({ weight: 12, arbitrary: foreseen }, { weight: 1, arbitrary: hostileValues });
};

const foreseenOf = (schema: JsonSchema, known: readonly string[]): fc.Arbitrary<unknown> | undefined => {
  if (schema.const !== undefined) return fc.constant(schema.const);
  if (schema.enum !== undefined) return fc.constantFrom<unknown>(...schema.enum);
  switch (schema.type) {
    case 'string':
      return fc.oneof(
        { weight: 4, arbitrary: fc.constantFrom(...known) },
        { weight: 2, arbitrary: fc.string({ maxLength: 40 }) },
        { weight: 1, arbitrary: fc.constantFrom(...hostileTexts) },
      );
    case 'integer':
      return fc.oneof(fc.integer({ min: 0, max: 40 }), fc.maxSafeInteger());
    case 'number':
      return fc.oneof(
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ noNaN: true, noDefaultInfinity: true }),
      );
    case 'boolean':
      return fc.boolean();
    case 'null':
      return fc.constant(null);
    case 'array':
      return fc.array(valuesOf(asSchema(schema.items), known), { maxLength: 3 });
    case 'object':
      return objectsOf(schema, known);
    default:
      return undefined;
  }
};

const objectsOf = (
  { properties = {}, required = [], additionalProperties }: JsonSchema,
  known: readonly string[],
): fc.Arbitrary<unknown> =>
  typeof additionalProperties === 'object'
    ? fc.dictionary(fc.constantFrom(...known), valuesOf(additionalProperties, known), { maxKeys: 3 })
    : fc.record(
        Object.fromEntries(
          Object.entries(properties).map(([name, each]) => [name, valuesOf(asSchema(each), known)]),
        ),
        { requiredKeys: [...required] },
      );

const asSchema = (schema: JsonSchema['items'] | JsonSchema | boolean): JsonSchema =>
  typeof schema !== 'object' || Array.isArray(schema) ? {} : (schema as JsonSchema);
