/** What must exist before a removed device may be inspected for its return, as versioned data (`assets/programs/release/`). */
import { z } from 'zod';
import { messageSchema } from '../message.ts';
import { sourceSchema } from '../procedure.ts';

const keySchema = z.string().regex(/^[a-z][a-z-]*$/);

export const stepOwners = ['attendant', 'competent person', 'manufacturer', 'administrator'] as const;
/** Who has the next step of a held device. */
export const stepOwnerSchema = z.enum(stepOwners);
export type StepOwner = z.infer<typeof stepOwnerSchema>;

export const evidenceKindSchema = z.object({
  key: keySchema,
  /**
   * `certificate`: a document of the manufacturer with its number and date. `statement`: written by a competent person and
   * agreed to by a second one. `fall case`: the closed investigation. `never`: it cannot exist.
   */
  how: z.enum(['certificate', 'statement', 'fall case', 'never']),
  /** What must be true of the device besides. */
  also: z.enum(['identity not presumed', 'checked in']).optional(),
  owner: stepOwnerSchema,
  label: messageSchema,
  /** What is missing while it does not exist, and so what to do. */
  missing: messageSchema,
});
export type EvidenceKind = z.infer<typeof evidenceKindSchema>;

/** One of each group must exist: `[[a], [b, c]]` is a, and b or c. */
const needsSchema = z.array(z.array(keySchema).min(1));
export type EvidenceNeeds = z.infer<typeof needsSchema>;

const ruleSchema = z.object({
  key: keySchema,
  /** Keys of reasons; `*` stands for one part between full stops, `**` alone for any reason. */
  reasons: z.array(z.string()).min(1),
  needs: needsSchema,
  source: sourceSchema,
});
type ReleaseRule = z.infer<typeof ruleSchema>;

export const releaseRulesSchema = z
  .object({
    key: z.string(),
    version: z.int().positive(),
    kinds: z.array(evidenceKindSchema).min(1),
    /** The first that names a reason holds; the last is for every other reason. */
    rules: z.array(ruleSchema).min(1),
  })
  .refine(({ rules }) => rules.at(-1)?.reasons.includes('**'), {
    error: 'The last release rule must hold for every other reason.',
  })
  .refine(
    ({ kinds, rules }) =>
      rules.every(({ needs }) => needs.flat().every((key) => kinds.some((kind) => kind.key === key))),
    { error: 'A release rule names a kind of evidence that is not listed.' },
  );
export type ReleaseRules = z.infer<typeof releaseRulesSchema>;

/** What an employer's program asks for instead: of a rule by its key, or of one reason by its own key, which has a full stop. */
export const strictReleaseSchema = z.object({
  for: z.string().min(1).max(80),
  needs: needsSchema.max(9),
  /** How many stand behind each statement, whoever wrote it among them; two where it says nothing. */
  persons: z.int().min(1).max(5).optional(),
});
export type StrictRelease = z.infer<typeof strictReleaseSchema>;

/** The rule that holds for a reason, by the reason's key. */
export const ruleOf = ({ rules }: ReleaseRules, reasonKey: string): ReleaseRule | undefined =>
  rules.find(({ reasons }) => reasons.some((pattern) => isNamed(pattern, reasonKey)));

const isNamed = (pattern: string, key: string): boolean => {
  if (pattern === '**') return true;
  const wanted = pattern.split('.');
  const parts = key.split('.');
  return (
    parts.length === wanted.length && wanted.every((part, index) => part === '*' || part === parts[index])
  );
};

/** What must exist for a reason, by the rules of the product and by those that a program makes stricter. */
export const needsOf = (
  rules: ReleaseRules,
  strict: readonly StrictRelease[] | undefined,
  reasonKey: string,
): EvidenceNeeds => {
  const own = ownRules(rules, strict, reasonKey);
  return own.length === 0 ? (ruleOf(rules, reasonKey)?.needs ?? []) : withoutRepeats(own);
};

/** Persons who stand behind a statement of the trade: who wrote it, and a second one who looked and agreed. */
export const leastPersons = 2;

/** How many persons must stand behind each statement for a reason. */
export const personsOf = (
  rules: ReleaseRules,
  strict: readonly StrictRelease[] | undefined,
  reasonKey: string,
): number =>
  Math.max(leastPersons, ...ownRules(rules, strict, reasonKey).map(({ persons }) => persons ?? leastPersons));

/** What a program says of the reason itself, and of the rule that holds for it: both hold. */
const ownRules = (
  rules: ReleaseRules,
  strict: readonly StrictRelease[] | undefined,
  reasonKey: string,
): readonly StrictRelease[] => {
  const keys = [reasonKey, ruleOf(rules, reasonKey)?.key];
  return (strict ?? []).filter(({ for: of }) => keys.includes(of));
};

const withoutRepeats = (own: readonly StrictRelease[]): EvidenceNeeds => [
  ...new Map(own.flatMap(({ needs }) => needs).map((group) => [group.join(), group])).values(),
];

export type Weakness =
  | { readonly what: 'unknown kind' | 'weaker'; readonly kind: string }
  | { readonly what: 'unknown rule' | 'too few persons' };

/** What a program's own release rule leaves out, or `undefined` where it asks for at least as much as the product's. */
export const weakness = (
  rules: ReleaseRules,
  { for: of, needs, persons = leastPersons }: StrictRelease,
): Weakness | undefined => {
  if (!of.includes('.') && rules.rules.every(({ key }) => key !== of)) return { what: 'unknown rule' };
  if (persons < leastPersons) return { what: 'too few persons' };
  const unknown = needs.flat().find((key) => rules.kinds.every((kind) => kind.key !== key));
  if (unknown !== undefined) return { what: 'unknown kind', kind: unknown };
  const least = rules.rules.find(({ key }) => key === of)?.needs ?? ruleOf(rules, of)?.needs ?? [];
  const left = least.find((group) => !needs.some((own) => own.every((key) => group.includes(key))));
  return left === undefined ? undefined : { what: 'weaker', kind: left[0] ?? '' };
};
