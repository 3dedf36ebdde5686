/** `reinspection …`: devices are drawn at random for a blind second inspection, and what came of it. */
import { type Command, InvalidArgumentError } from 'commander';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import type { OutputOf } from '../../station/contract.ts';
import { type Job, jobOf, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';
import { columns, dateText } from '../wording.ts';

export const addReinspection = (program: Command, { words, terminal }: Shell): void => {
  const reinspection = program.command('reinspection').description(words('help-reinspection'));

  reinspection
    .command('list')
    .description(words('help-reinspection-list'))
    .action(async (_options: object, command: Command) => {
      const job = jobOf(command, terminal);
      const found = await withStation(job, (call) => call('reinspection.list', {}));
      job.give(found, listLines(found, job));
    });

  reinspection
    .command('draw')
    .description(words('help-reinspection-draw'))
    .requiredOption('--count <number>', words('help-reinspection-count'), (text: string) => {
      if (!/^[1-9]\d*$/.test(text)) throw new InvalidArgumentError(words('help-reinspection-count'));
      return Number(text);
    })
    .action(async ({ count }: { count: number }, command: Command) => {
      const job = jobOf(command, terminal);
      const { drawn } = await withStation(job, (call) => call('reinspection.draw', { count }));
      job.give({ drawn }, drawn.map(formatBenchId));
    });

  reinspection
    .command('agreement')
    .description(words('help-reinspection-agreement'))
    .action(async (_options: object, command: Command) => {
      const job = jobOf(command, terminal);
      const found = await withStation(job, (call) => call('insight.agreement', {}));
      job.give(found, agreementLines(found, job));
    });
};

const listLines = (
  { waiting, signed, pairs, drawable, withinDays }: OutputOf<'reinspection.list'>,
  { words, language }: Job,
): readonly string[] => [
  words('reinspection-drawable', { count: drawable, days: withinDays }),
  ...(waiting.length === 0
    ? [words('reinspection-none-waits')]
    : columns(
        waiting.map(({ benchId, manufacturer, model, serial, until, begun }) => [
          formatBenchId(benchId),
          `${manufacturer} ${model}, ${serial}`,
          begun === undefined
            ? words('reinspection-until', { date: dateText(until, language) })
            : words('reinspection-begun', { inspection: begun }),
        ]),
      )),
  words('reinspection-pairs', { count: pairs }),
  ...columns(
    signed.map(({ benchId, first, second }) => [
      formatBenchId(benchId),
      `${first.by}: ${words(`verdict-${first.verdict}`)}`,
      `${second.by}: ${words(`verdict-${second.verdict}`)}`,
    ]),
  ),
];

type Agreement = OutputOf<'insight.agreement'>;

const agreementLines = (
  { verdict, checks, isFew, fewPairs, devices }: Agreement,
  { words, language }: Job,
): readonly string[] => {
  const number = new Intl.NumberFormat(language === 'es' ? 'es-ES' : 'en-GB', {
    minimumFractionDigits: 2,
    maximumFractionDigits: 2,
  });
  const kappaText = ({ kappa, lower, upper }: Agreement['verdict']): string => {
    if (kappa === undefined) return words('agreement-unknown');
    return lower === undefined || upper === undefined
      ? number.format(kappa)
      : words('agreement-kappa', {
          kappa: number.format(kappa),
          lower: number.format(lower),
          upper: number.format(upper),
        });
  };
  return [
    words('agreement-rests', { pairs: verdict.pairs, devices }),
    ...(isFew ? [words('agreement-few', { least: fewPairs })] : []),
    ...columns([
      [words('agreement-verdict'), kappaText(verdict)],
      ...checks.map(({ title, agreement }) => [title[language], kappaText(agreement)]),
    ]),
  ];
};
