/** Under which name and with which badge a person was known when something was recorded. */
import type { Person } from './person.ts';

export interface KnownAs {
  readonly name: string;
  readonly badge: string;
}

type Change = { readonly seq: number } & Partial<KnownAs>;

/** As the record had it with event `seq`; as it has it now where it does not say how the person came into it. */
export const knownAs = (person: Person, seq: number): KnownAs => {
  const { name, badge, history = [], amendments = [] } = person;
  const [first] = history;
  if (first?.event.type !== 'person.added') return { name, badge };
  const changes: readonly Change[] = [
    ...history.flatMap(({ seq: at, event }): readonly Change[] => {
      if (event.type === 'person.name-changed') return [{ seq: at, name: event.name }];
      return event.type === 'person.badge-changed' ? [{ seq: at, badge: event.badge }] : [];
    }),
    ...amendments.flatMap(({ seq: at, correction }): readonly Change[] =>
      correction.field === 'name' ? [{ seq: at, name: correction.now }] : [],
    ),
  ];
  const before = changes.filter((change) => change.seq <= seq).sort((one, other) => one.seq - other.seq);
  return before.reduce<KnownAs>(
    (known, change) => ({ name: change.name ?? known.name, badge: change.badge ?? known.badge }),
    { name: first.event.person.name, badge: first.event.person.badge },
  );
};
