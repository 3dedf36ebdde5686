/** `procedure`: every check in order, with the answers that it takes. */
import type { Command } from 'commander';
import type { Language } from '../../domain/message.ts';
import type { Check } from '../../domain/procedure.ts';
import { type Job, jobOf, withAnyStation } from '../job.ts';
import type { Shell } from '../terminal.ts';

export const addProcedure = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('procedure')
    .description(words('help-procedure'))
    .action(async (_options, command: Command) => {
      const job = jobOf(command, terminal);
      const { procedure } = await withAnyStation(job, false, (call) => call('procedure.show', {}));
      const { key, version, title } = procedure;
      job.give(
        {
          procedure: { key, version, title: title[job.language] },
          checks: procedure.checks.map((check) => described(check, job.language)),
        },
        [
          `${title[job.language]} (${key} v${version})`,
          ...procedure.checks.flatMap((check) => listed(check, job)),
        ],
      );
    });
};

/** The answers as an answers file writes them. */
const answersOf = (check: Check): readonly string[] => {
  switch (check.kind) {
    case 'marking':
      return ['legible', 'illegible', 'missing'];
    case 'condition':
      return ['good', 'defects'];
    case 'payout-length':
      return ['length'];
    case 'lifeline-diameter':
      return ['diameters'];
  }
};

const described = (check: Check, language: Language) => ({
  key: check.key,
  kind: check.kind,
  zone: check.zone,
  title: check.title[language],
  criterion: check.criterion[language],
  appliesWhen: check.appliesWhen,
  answers: answersOf(check),
  ...(check.kind === 'condition'
    ? {
        positioned: check.positioned,
        defects: check.defects.map(({ key, label, effect }) => ({ key, label: label[language], effect })),
      }
    : {}),
});

const listed = (check: Check, { language, words }: Job): readonly string[] => [
  '',
  `${check.key}  ${check.title[language]}`,
  `  ${words('answers')}: ${answersOf(check).join(' | ')}`,
  ...(check.kind === 'condition'
    ? check.defects.map(
        ({ key, label, effect }) => `    ${key}: ${label[language]} (${words(`effect-${effect}`)})`,
      )
    : []),
];
