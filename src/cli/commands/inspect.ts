/** `inspect FILE.json`: a documented inspection from an answers file, by the same rules as at the bench. */
import type { Command } from 'commander';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import { readAnswerPictures } from '../answer-pictures.ts';
import { readAnswersFile } from '../answers-file.ts';
import { Failure } from '../failure.ts';
import { type InspectionOutcome, inspectAndSign, judge } from '../inspect-by-file.ts';
import { issueTagInto } from '../issue-tag.ts';
import { deviceMeant, type Job, jobOf, withStation } from '../job.ts';
import { pinFrom } from '../pin-from.ts';
import type { Shell } from '../terminal.ts';
import { dateText } from '../wording.ts';

interface InspectOptions {
  readonly device?: string;
  readonly pinFile?: string;
  readonly tags?: string;
  readonly resume?: boolean;
  readonly blind?: boolean;
}

export const addInspect = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('inspect')
    .argument('<file.json>', words('help-answers-file'))
    .description(words('help-inspect'))
    .option('--device <id>', words('help-inspect-device'))
    .option('--pin-file <file>', words('help-pin-file'))
    .option('--tags <dir>', words('help-inspect-tags'))
    .option('--resume', words('help-resume'))
    .option('--blind', words('help-inspect-blind'))
    .addHelpText('after', `\n${words('help-inspect-file')}`)
    .action(async (file: string, options: InspectOptions, command: Command) => {
      const job = jobOf(command, terminal);
      const { language } = job;
      const { badge, answers, sign, benchId, code, pictures: paths } = await readAnswersFile(file, language);
      const named = options.device ?? benchId ?? code;
      if (named === undefined) {
        throw new Failure({
          code: 'device-not-named',
          sentence: words('device-not-named'),
          field: 'benchId',
        });
      }
      const pictures = await readAnswerPictures(file, paths, language);
      await withStation(
        job,
        async (call) => {
          const device = await deviceMeant(job, call, named);
          const { resume = false, blind: isBlind = false } = options;
          const written = { benchId: device, answers, pictures, resume, isBlind };
          if (!sign) {
            const judged = await judge(call, written, language);
            return job.give(judged, outcomeLines(judged, job));
          }
          const outcome = await inspectAndSign(call, written, await pinFrom(options.pinFile, job), language);
          const kind = outcome.verdict === 'pass' ? 'status' : 'quarantine';
          const files =
            options.tags === undefined || !outcome.isTagged
              ? []
              : await issueTagInto(call, { benchId: device, kind }, options.tags, language);
          job.give({ ...outcome, files }, [...outcomeLines(outcome, job), ...files]);
        },
        job.badge ?? badge,
      );
    });
};

const outcomeLines = (outcome: InspectionOutcome, { language, words }: Job): readonly string[] => [
  `${formatBenchId(outcome.benchId)}: ${words(`verdict-${outcome.verdict}`)}`,
  ...outcome.reasons.map(({ sentence }) => `  - ${sentence[language]}`),
  ...(outcome.signedOn === undefined
    ? [words('not-recorded')]
    : [
        words('signed-line', {
          by: outcome.signedBy ?? '',
          date: dateText(outcome.signedOn, language),
          tag: outcome.tagNumber ?? 0,
        }),
      ]),
  ...(outcome.dueOn === undefined
    ? []
    : [
        outcome.dueFor === undefined || outcome.dueFor === 'documented inspection'
          ? words('next-due', { date: dateText(outcome.dueOn, language) })
          : words('due-for', {
              what: words(`due-what-${outcome.dueFor}`),
              date: dateText(outcome.dueOn, language),
            }),
      ]),
];
