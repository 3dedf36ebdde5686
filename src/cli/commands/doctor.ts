/** `doctor`: how the PC, the record and what the bench works with stand, and what to do. */
import { access } from 'node:fs/promises';
import { join } from 'node:path';
import type { Command } from 'commander';
import { instant } from '../../domain/brand.ts';
import { byGravity, type Finding, isAnythingWrong, type WordedFinding } from '../../domain/health/finding.ts';
import { countsOf, healthReport } from '../../domain/health/report.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import { dataFolder } from '../../host/data-folder.ts';
import { faultLog } from '../../host/fault-log.ts';
import { productFolder } from '../../host/product-folder.ts';
import { surroundingsOf } from '../../host/surroundings.ts';
import { examineWithoutRecord } from '../../station/health/examine.ts';
import { stateName, subjectName, wordFindingIn } from '../../station/health/health-words.ts';
import { openStation, type Station } from '../../station/station.ts';
import { Failure } from '../failure.ts';
import { checkWritable, writeBytes } from '../files.ts';
import { type Job, jobOf, stationCall } from '../job.ts';
import type { Shell } from '../terminal.ts';
import { untilEnded } from '../until-ended.ts';

export const addDoctor = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('doctor')
    .description(words('help-doctor'))
    .option('--out <file>', words('help-doctor-out'))
    .action(async ({ out }: { readonly out?: string }, command: Command) => {
      const job = jobOf(command, terminal);
      if (out !== undefined) await checkWritable(out, job.language);
      const findings = byGravity(await findingsOf(job));
      const word = wordFindingIn(job.language);
      const report = healthReport(findings, new Date().toISOString(), word);
      if (out !== undefined) {
        const text = out.endsWith('.json')
          ? JSON.stringify(report, undefined, 2)
          : reportText(report.findings, job);
        await writeBytes(out, Buffer.from(`${text}\n`), job.language);
      }
      const counts = countsOf(findings);
      const lines = [
        ...linesOf(findings.map(word), job),
        words('doctor-counts', { ...counts, unknown: counts['not known'] }),
        ...(out === undefined ? [] : [words('doctor-report', { file: out })]),
      ];
      job.give({ counts, findings: findings.map(word) }, lines);
      if (isAnythingWrong(findings)) throw new Found();
    });
};

/** Everything was said already; only the exit status is left. */
class Found extends Failure {
  override readonly isSaid = true;
  constructor() {
    super({ code: 'doctor-found', sentence: '' });
  }
}

const reportText = (findings: readonly WordedFinding[], job: Job): string =>
  linesOf(findings, job).join('\n');

const linesOf = (findings: readonly WordedFinding[], { language }: Job): readonly string[] =>
  findings.map(({ subject, state, found, todo }) => {
    const head = `${stateName(state, language)}: ${subjectName(subject, language)}.`;
    return [head, found, todo ?? ''].join(' ').trimEnd();
  });

/** The folder is not made, and a record that cannot be opened is told as a finding among the others. */
const findingsOf = async (job: Job): Promise<readonly Finding[]> => {
  const { folder } = dataFolder(job.data, job.terminal.environment);
  const surroundings = surroundingsOf('terminal', folder);
  const places = {
    folder,
    productFolder,
    surroundings,
    language: job.language,
    now: () => instant(new Date().toISOString()),
  };
  const without = async (closed: Refusal | undefined) =>
    (await examineWithoutRecord(places, closed)).findings;
  if (!(await isRecordThere(folder))) return without(undefined);
  const options = { folder, productFolder, surroundings, onFault: faultLog(folder) };
  // What keeps a station from opening without a sentence is the product's own files, and told of those.
  const station = await openStation(options).catch(() => refusal('internal-error'));
  return isRefusal(station) ? without(station) : examined(station, job);
};

const examined = async (station: Station, job: Job): Promise<readonly Finding[]> => {
  const call = stationCall(station, job.language);
  try {
    const { job: number } = await call('health.start', {});
    const end = await untilEnded(() => call('health.status', { job: number }));
    if (end.state === 'refused') throw new Failure({ code: end.code, sentence: end.sentence });
    return end.findings;
  } finally {
    await station.close();
  }
};

const isRecordThere = (folder: string): Promise<boolean> =>
  access(join(folder, 'ledger.sqlite')).then(
    () => true,
    () => false,
  );
