/** `demo --out DIR`: the whole job on the invented depot without a window, and everything that it leaves. */
import { mkdir, readdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { Command } from 'commander';
import { z } from 'zod';
import { formatBenchId } from '../../domain/bench-id/bench-id.ts';
import { factsOf } from '../../domain/decide/inspection.ts';
import { markingElements } from '../../domain/marking.ts';
import type { ModelSheet } from '../../domain/model-sheet.ts';
import type { Procedure } from '../../domain/procedure.ts';
import { refusal } from '../../domain/refusal.ts';
import { verdictOf } from '../../domain/verdict.ts';
import { productFolder } from '../../host/product-folder.ts';
import { type AnswersFile, readAnswersFile } from '../answers-file.ts';
import { Failure, failureOf, fileFailure } from '../failure.ts';
import { readBytes, readJson, writeBytes } from '../files.ts';
import { type InspectionOutcome, inspectAndSign } from '../inspect-by-file.ts';
import { issueTagInto } from '../issue-tag.ts';
import { type Job, jobOf, type StationCall, withStationIn } from '../job.ts';
import type { Shell } from '../terminal.ts';

const examples = ['pass.json', 'three-findings.json'];
const demoFile = (...path: readonly string[]): string => join(productFolder, 'demo-data', ...path);

export const addDemo = (program: Command, { words, terminal }: Shell): void => {
  program
    .command('demo')
    .description(words('help-demo'))
    .requiredOption('--out <dir>', words('help-demo-out'))
    .action(async ({ out }: { readonly out: string }, command: Command) => {
      const job = jobOf(command, terminal);
      const { language } = job;
      const folder = resolve(out);
      await makeEmptyFolder(folder, job);
      const station = join(folder, 'station');
      const done = await withStationIn({ folder: station, language, badge: undefined }, async (call) => {
        await call('station.load-demo', {});
        const outcomes: InspectionOutcome[] = [];
        const files: string[] = [];
        for (const example of examples) {
          const written = await readAnswersFile(demoFile('answers', example), language);
          const outcome = await inspectNewDevice(call, written, job);
          const kind = outcome.verdict === 'pass' ? 'status' : 'quarantine';
          const tag = { benchId: outcome.benchId, kind } as const;
          outcomes.push(outcome);
          files.push(...(await issueTagInto(call, tag, join(folder, 'tags'), language)));
        }
        const { record, verification } = await leaveRecord(call, folder, job);
        return { inspections: outcomes, verification, files: [...files, ...record] };
      });
      job.give({ station, ...done }, [
        ...done.inspections.map(
          ({ benchId, verdict, tagNumber }) =>
            `${formatBenchId(benchId)}: ${words(`verdict-${verdict}`)}, ${words('tag-number', { tag: tagNumber ?? 0 })}`,
        ),
        words('ledger-sound', {
          events: done.verification.head.size,
          rootHash: done.verification.head.rootHash,
        }),
        ...done.files,
        words('demo-next', { folder: station }),
      ]);
    });
};

const makeEmptyFolder = async (folder: string, { language, words }: Job): Promise<void> => {
  let names: readonly string[];
  try {
    await mkdir(folder, { recursive: true });
    names = await readdir(folder);
  } catch (error) {
    throw fileFailure('write', folder, error, language);
  }
  if (names.includes('station') || names.some((name) => name.startsWith('ledger.'))) {
    throw failureOf(refusal('demo-folder-in-use', { folder }, 'out'), language);
  }
  if (names.length === 0) return;
  throw new Failure({
    code: 'folder-not-empty',
    sentence: words('folder-not-empty', { folder }),
    field: 'out',
  });
};

/** Registers a device on which the written inspection can be carried out, with the code that it names, and inspects it. */
const inspectNewDevice = async (
  call: StationCall,
  { answers, badge, code }: AnswersFile,
  { language }: Job,
): Promise<InspectionOutcome> => {
  const inspector = await demoInspector(badge, language);
  await call('session.sign-in', { badge: inspector.badge });
  const { procedure } = await call('procedure.show', {});
  const { modelSheets } = await call('model-sheet.list', {});
  const sheet = modelSheets.find((candidate) => isMadeFor(candidate, answers, procedure));
  if (sheet === undefined) throw failureOf(refusal('internal-error'), language);
  const makerCode = code ?? `DEMO${Date.now()}`;
  const { benchId } = await call('device.register', {
    modelSheetId: sheet.modelSheetId,
    serial: `S-${makerCode}`,
    dateOfManufacture: '2026-03',
    marking: markingElements.map((element) => ({ element, state: 'legible' as const })),
    otherCodes: [{ code: makerCode, kind: 'maker' }],
  });
  return inspectAndSign(
    call,
    { benchId, answers, pictures: [], resume: false, isBlind: false },
    inspector.pin,
    language,
  );
};

/** The answers end in a verdict for devices of the model, and the payout that they confirm is just its rated length. */
const isMadeFor = (sheet: ModelSheet, answers: AnswersFile['answers'], procedure: Procedure): boolean => {
  const confirmed = Object.values(answers).find((answer) => answer.kind === 'length');
  const fits = confirmed === undefined || Math.abs(confirmed.confirmedM - sheet.ratedLengthM) < 0.001;
  return fits && verdictOf(procedure, answers, factsOf(sheet), 'm').kind !== 'incomplete';
};

const peopleSchema = z.array(z.object({ badge: z.string(), roles: z.array(z.string()), pin: z.string() }));

const demoInspector = async (badge: string | undefined, language: Job['language']) => {
  const people = peopleSchema.parse(await readJson(demoFile('people.json'), language));
  const person = people.find((each) =>
    badge === undefined ? each.roles.includes('inspector') : each.badge === badge,
  );
  if (person === undefined) throw failureOf(refusal('badge-unknown', { badge: badge ?? '' }), language);
  return person;
};

const leaveRecord = async (call: StationCall, folder: string, { language, words }: Job) => {
  const exported = await call('ledger.export', {});
  const record = join(folder, 'record.jsonl');
  await writeBytes(record, await readBytes(exported.path, language), language);
  const verification = await call('ledger.verify', {});
  const proof = join(folder, 'verification.json');
  await writeBytes(proof, Buffer.from(`${JSON.stringify(verification, undefined, 2)}\n`), language);
  if (verification.sound) return { verification, record: [record, proof] };
  const sentence = words('ledger-not-sound', {
    faults: verification.faults.map(({ kind }) => kind).join('; '),
  });
  throw new Failure({ code: 'ledger-not-sound', sentence }, verification);
};
