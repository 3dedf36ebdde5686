/** `scan TEXT`: what a scanned or typed text means at the station. */
import type { Command } from 'commander';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import { commandSymbols } from '../../domain/command-symbol.ts';
import { type Identification, type MarkingData, markedDateText } from '../../domain/marking-data.ts';
import { refusal } from '../../domain/refusal.ts';
import type { OutputOf } from '../../station/contract.ts';
import type { DeviceSummary } from '../../station/views.ts';
import { withControlCharacters } from '../control-notation.ts';
import { Failure, failureOf } from '../failure.ts';
import { type Job, jobOf, withStation } from '../job.ts';
import type { Shell } from '../terminal.ts';

export const addScan = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('scan')
    .argument('<text>', words('help-scan-text'))
    .description(words('help-scan'))
    .action(async (text: string, _options, command: Command) => {
      const job = jobOf(command, terminal);
      const scan = { text: withControlCharacters(text) };
      const meaning = await withStation(job, (call) => call('scan.interpret', scan));
      if (meaning.meaning === 'malformed')
        throw new Failure({ code: meaning.code, sentence: meaning.sentence, field: 'text' });
      job.give(meaning, linesOf(meaning, job));
    });
};

type Meaning = Exclude<OutputOf<'scan.interpret'>, { meaning: 'malformed' }>;

const linesOf = (meaning: Meaning, job: Job): readonly string[] => {
  const { words, language } = job;
  switch (meaning.meaning) {
    case 'command': {
      const symbol = commandSymbols.find(({ name }) => name === meaning.command);
      return [words('scan-command', { label: symbol?.label[language] ?? meaning.command })];
    }
    case 'badge':
      return [words('scan-badge', { name: meaning.name })];
    case 'place':
      return [words('scan-place', { code: meaning.code })];
    case 'device':
      return [
        words('scan-device', { device: deviceText(meaning.device), by: words(`scan-by-${meaning.by}`) }),
      ];
    case 'worthless tag':
      return [failureOf(refusal('tag-worthless', { state: meaning.state }), language).error.sentence];
    case 'bench ID not registered':
      return [words('scan-not-registered', { benchId: formatBenchId(meaning.benchId) })];
    case 'suggestion':
      return [
        words('scan-suggestion'),
        ...meaning.devices.map(({ device }) => `  ${deviceText(device)}`),
        ...dataLines(meaning.data, job),
      ];
    case 'unknown':
      return [words('scan-unknown', { text: meaning.text }), ...dataLines(meaning.data, job)];
  }
};

const deviceText = ({ benchId, manufacturer, model, serial }: DeviceSummary): string =>
  `${formatBenchId(benchId)}, ${manufacturer} ${model}, ${serial}`;

const dataLines = (data: MarkingData | undefined, { words }: Job): readonly string[] => {
  if (data === undefined) return [];
  const said = saidIn(data.identification).map(([name, text]) => words(`said-${name}`, { text }));
  return [
    ...(said.length === 0 ? [] : [words('scan-says', { words: said.join(', ') })]),
    ...(data.names === 'its model' ? [words('scan-model-only')] : []),
    ...(data.separatorsMayBeLost ? [words('scan-doubt')] : []),
  ];
};

const saidIn = (identification: Identification): readonly (readonly [keyof Identification, string])[] =>
  (Object.keys(identification) as readonly (keyof Identification)[]).flatMap((name) => {
    const said = identification[name];
    if (said === undefined) return [];
    return [[name, typeof said === 'string' ? said : markedDateText(said)]];
  });
