/** What the rules of the product rest on, gathered from the rules themselves: each source once, with what it is for. */
import { z } from 'zod';
import { type Message, messageSchema } from './message.ts';
import { type Source, sourceSchema } from './procedure.ts';

export interface RuleSource extends Source {
  /** The rules that name it, by their own titles; a rule without one is counted only. */
  readonly of: readonly Message[];
  readonly rules: number;
}

const ruleSchema = z.looseObject({ source: sourceSchema });
const titledSchema = z.looseObject({
  title: messageSchema.optional().catch(undefined),
  name: messageSchema.optional().catch(undefined),
  label: messageSchema.optional().catch(undefined),
  text: messageSchema.optional().catch(undefined),
});

/** Those that are quoted from memory first, then by citation. Anything may be looked through: rules are found by their shape. */
export const sourcesOfRules = (rules: readonly unknown[]): readonly RuleSource[] => {
  const found = new Map<string, { source: Source; of: Message[]; rules: number }>();
  const lookThrough = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    const rule = ruleSchema.safeParse(value);
    if (rule.success) {
      const { source } = rule.data;
      const key = `${source.mark}\0${source.citation}`;
      const entry = found.get(key) ?? { source, of: [], rules: 0 };
      found.set(key, entry);
      entry.rules += 1;
      const { title, name, label, text } = titledSchema.parse(value);
      const said = title ?? name ?? label ?? text;
      if (said !== undefined && !entry.of.some(({ en }) => en === said.en)) entry.of.push(said);
    }
    for (const part of Object.values(value)) lookThrough(part);
  };
  for (const rule of rules) lookThrough(rule);
  const order: readonly Source['mark'][] = [
    'from memory',
    'published',
    'common practice',
    'manufacturer',
    'employer',
  ];
  return [...found.values()]
    .map(({ source, of, rules: count }) => ({ ...source, of, rules: count }))
    .toSorted(
      (a, b) => order.indexOf(a.mark) - order.indexOf(b.mark) || a.citation.localeCompare(b.citation, 'en'),
    );
};
