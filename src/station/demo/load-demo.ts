/** Loads the invented depot into an empty ledger by the same decisions that a real day goes through, back-dated. */
import { randomUUID } from 'node:crypto';
import type { Answer } from '../../domain/answer.ts';
import { type Instant, instant, metres } from '../../domain/brand.ts';
import { dateInZone } from '../../domain/calendar.ts';
import type { Decision } from '../../domain/decide/decision.ts';
import { decideRegister, decideRemove } from '../../domain/decide/device.ts';
import { decideAnswer, decideSign, decideStart, factsOf } from '../../domain/decide/inspection.ts';
import { decideRecordModelSheet } from '../../domain/decide/model-sheet.ts';
import { decideKeepFindingPicture } from '../../domain/decide/picture.ts';
import { decideProveTag } from '../../domain/decide/tag.ts';
import type { DomainEvent, Occasion } from '../../domain/event.ts';
import { lengthText } from '../../domain/length.ts';
import type { MarkingElement, MarkingEntry } from '../../domain/marking.ts';
import { markingElements } from '../../domain/marking.ts';
import type { ModelSheet } from '../../domain/model-sheet.ts';
import type { FindingPicture, PictureFile } from '../../domain/picture.ts';
import { applicableChecks, type Check } from '../../domain/procedure.ts';
import { isRefusal, type Refusal, refusal } from '../../domain/refusal.ts';
import type { EvidenceStore } from '../../ledger/evidence-store.ts';
import type { Ledger, LedgerReader } from '../../ledger/ledger.ts';
import { caseIn, deviceIn, personIn } from '../lookup.ts';
import { hashPin } from '../pin.ts';
import { programIn } from '../program-in.ts';
import { putPicture } from '../put-picture.ts';
import type { Rules } from '../rules.ts';
import { keyMade } from '../station-key.ts';
import { corrected } from './corrected-step.ts';
import { custodySteps } from './custody-steps.ts';
import { type DemoDepot, type DemoDevice, readDemoDepot } from './demo-files.ts';
import { type DrawnFinding, drawFinding } from './draw-finding.ts';
import { lifeOfPerson } from './people-steps.ts';
import { adopted, surveyed } from './program-steps.ts';
import { minutesADay, type TimedStep } from './timed-step.ts';

interface Step {
  readonly occasion: Occasion;
  readonly decide: (reader: LedgerReader) => Promise<Decision>;
}

/** Returns the number of events; refuses, and records nothing, where the folder holds a station already. */
export const loadDemo = async (
  ledger: Ledger,
  evidence: EvidenceStore,
  rules: Rules,
  productFolder: string,
  now: Instant,
): Promise<number | Refusal> => {
  const depot = await readDemoDepot(productFolder);
  if ((await ledger.read((reader) => reader.station())) !== undefined)
    return refusal('station-already-set-up');
  const drawn = await putDrawings(evidence);
  if (isRefusal(drawn)) return drawn;
  const made = await keyMade(ledger);
  const steps = [
    ...foundation(depot, made, now),
    ...depot.programs.map((program) => adopted(program, rules)),
    ...depot.fleet.flatMap(surveyed),
    ...depot.fleet.flatMap((device) => lifeOf(device, depot, rules, drawn)),
    ...custodySteps(depot.custody, rules),
  ];
  const ordered = steps
    .map((step, index) => ({ step, index }))
    .sort((a, b) => b.step.minutesAgo - a.step.minutesAgo || a.index - b.index)
    .map(({ step }) => timed(step, depot, now));
  const events = await ledger.appendAll(iterate(ordered));
  if (isRefusal(events)) return events;
  const credentials = await Promise.all(depot.people.map((person) => hashPin(person.personId, person.pin)));
  await ledger.writeAside(async (writer) => {
    for (const credential of credentials) await writer.putCredential(credential);
  });
  return events;
};

async function* iterate(steps: readonly Step[]): AsyncIterable<Step> {
  yield* steps;
}

const timed = ({ minutesAgo, by, decide }: TimedStep, depot: DemoDepot, now: Instant): Step => {
  const at = instant(new Date(Date.parse(now) - minutesAgo * 60_000).toISOString());
  const occasion = { at, on: dateInZone(at, depot.station.timeZone), by };
  return { occasion, decide: (reader) => decide(reader, occasion) };
};

const foundation = (depot: DemoDepot, made: DomainEvent, now: Instant): readonly TimedStep[] => {
  const today = dateInZone(now, depot.station.timeZone);
  const first = 900 * minutesADay;
  return [
    {
      minutesAgo: first,
      by: 'station',
      decide: async (reader) =>
        (await reader.station()) === undefined
          ? [{ type: 'station.created', stationId: randomUUID(), ...depot.station, demo: true }, made]
          : refusal('station-already-set-up'),
    },
    ...depot.people.flatMap((person) => lifeOfPerson(person, today, first)),
    ...depot.modelSheets.map((sheet) => ({
      minutesAgo: first,
      by: 'P001',
      decide: async (reader: LedgerReader) => decideRecordModelSheet(sheet, await reader.modelSheets()),
    })),
  ];
};

/** Everything that happened to one device, each with its time. */
const lifeOf = (
  device: DemoDevice,
  depot: DemoDepot,
  rules: Rules,
  drawn: Drawings,
): readonly TimedStep[] => {
  const sheet = depot.modelSheets.find(({ modelSheetId }) => modelSheetId === device.modelSheetId);
  if (sheet === undefined)
    throw new Error(`demo-data names the model sheet ${device.modelSheetId}, which it does not hold.`);
  const { removed, open, misread } = device;
  return [
    {
      minutesAgo: device.registeredDaysAgo * minutesADay,
      by: 'P005',
      decide: async () => registered({ ...device, ...misread }, sheet),
    },
    ...(misread === undefined ? [] : [corrected(device, misread, rules)]),
    ...device.history.flatMap(({ daysAgo, by, answers, pictures }) =>
      inspectionSteps(device, sheet, rules, {
        minutesAgo: daysAgo * minutesADay,
        by,
        answers: answers ?? {},
        pictures: Object.entries(pictures).flatMap(([check, names]) =>
          names.map((name) => ({ check, ...drawn[name] })),
        ),
        sign: true,
      }),
    ),
    ...(removed === undefined
      ? []
      : [
          {
            minutesAgo: removed.daysAgo * minutesADay,
            by: removed.by,
            decide: async (reader: LedgerReader) => {
              const row = await deviceIn(reader, device.benchId);
              return isRefusal(row)
                ? row
                : decideRemove(row.device, await programIn(reader, rules), removed.ground, removed.note, []);
            },
          },
          tagScanned(device, removed.daysAgo * minutesADay - 5, removed.by),
        ]),
    ...(open === undefined
      ? []
      : inspectionSteps(device, sheet, rules, {
          minutesAgo: 90,
          by: open.by,
          answers: {},
          pictures: [],
          sign: false,
        }).slice(0, open.answered + 1)),
  ];
};

/** The tag that belongs on the device was fixed to it and scanned. */
const tagScanned = ({ benchId }: DemoDevice, minutesAgo: number, by: string): TimedStep => ({
  minutesAgo,
  by,
  decide: async (reader) => {
    const row = await deviceIn(reader, benchId);
    return isRefusal(row) ? row : decideProveTag(row.device, row.device.lastTagNumber);
  },
});

const registered = (device: DemoDevice, sheet: ModelSheet): Decision =>
  decideRegister(
    device.benchId,
    {
      modelSheetId: sheet.modelSheetId,
      serial: device.serial,
      dateOfManufacture: device.dateOfManufacture,
      marking: markingElements.map((element) => markingEntry(element, device, sheet)),
      otherCodes: [{ code: device.makerCode, kind: 'maker' }],
      regularUserId: device.regularUserId,
    },
    { benchIdTaken: false, modelSheetKnown: true },
  );

const markingEntry = (element: MarkingElement, device: DemoDevice, sheet: ModelSheet): MarkingEntry => {
  const words: Record<MarkingElement, string> = {
    manufacturer: sheet.manufacturer,
    model: sheet.model,
    serialNumber: device.serial,
    dateOfManufacture: device.dateOfManufacture,
    lifelineMaterialAndSize: `${sheet.lifelineMaterial} wire rope ${sheet.lifelineDiameterMm} mm`,
    ratedLength: lengthText(sheet.ratedLengthM, 'm', 'en'),
    capacityRange: `${sheet.capacityKg.from}–${sheet.capacityKg.to} kg`,
    standard: sheet.standard,
    warnings: 'Read the instructions before use.',
  };
  return { element, state: 'legible', text: words[element] };
};

type Drawings = Readonly<Record<DrawnFinding, PictureFile>>;

const putDrawings = async (evidence: EvidenceStore): Promise<Drawings | Refusal> => {
  const put = async (finding: DrawnFinding) =>
    putPicture(evidence, (await drawFinding(finding)).toString('base64'));
  const brokenWires = await put('broken-wires');
  if (isRefusal(brokenWires)) return brokenWires;
  const crushing = await put('crushing');
  return isRefusal(crushing) ? crushing : { 'broken-wires': brokenWires, crushing };
};

interface DemoInspection {
  readonly minutesAgo: number;
  readonly by: string;
  readonly answers: Readonly<Record<string, Answer>>;
  readonly pictures: readonly FindingPicture[];
  readonly sign: boolean;
}

/** Start, one answer after another, and the signature; the whole walk takes under an hour. */
const inspectionSteps = (
  device: DemoDevice,
  sheet: ModelSheet,
  rules: Rules,
  { minutesAgo, by, answers, pictures, sign }: DemoInspection,
): readonly TimedStep[] => {
  const { procedure, reference } = rules.current;
  const checks = applicableChecks(procedure, factsOf(sheet));
  const openCase = async (reader: LedgerReader) => {
    const row = await deviceIn(reader, device.benchId);
    return isRefusal(row) ? row : caseIn(reader, row.device.openInspection ?? 0, rules);
  };
  return [
    {
      minutesAgo,
      by,
      decide: async (reader) => {
        const row = await deviceIn(reader, device.benchId);
        return isRefusal(row) ? row : decideStart(row.device, await reader.nextInspectionNumber(), reference);
      },
    },
    ...checks.map((check, index) => ({
      minutesAgo: minutesAgo - 1 - index,
      by,
      decide: async (reader: LedgerReader) => {
        const open = await openCase(reader);
        return isRefusal(open)
          ? open
          : decideAnswer(open.inspection, open, check.key, answers[check.key] ?? goodAnswer(check, sheet));
      },
    })),
    ...pictures.map((picture) => ({
      minutesAgo: minutesAgo - 1 - checks.length,
      by,
      decide: async (reader: LedgerReader) => {
        const open = await openCase(reader);
        return isRefusal(open) ? open : decideKeepFindingPicture(open.inspection, open, picture, []);
      },
    })),
    ...(sign
      ? [
          {
            minutesAgo: minutesAgo - 2 - checks.length,
            by,
            decide: async (reader: LedgerReader, occasion: Occasion) => {
              const open = await openCase(reader);
              if (isRefusal(open)) return open;
              const signer = await personIn(reader, by);
              return isRefusal(signer) ? signer : decideSign(open.inspection, open, signer, occasion);
            },
          },
          ...(device.tagNotScanned ? [] : [tagScanned(device, minutesAgo - 5 - checks.length, by)]),
        ]
      : []),
  ];
};

const goodAnswer = (check: Check, sheet: ModelSheet): Answer => {
  switch (check.kind) {
    case 'marking':
      return { kind: 'marking', state: 'legible' };
    case 'condition':
      return { kind: 'good' };
    case 'payout-length':
      return { kind: 'length', confirmedM: sheet.ratedLengthM };
    case 'lifeline-diameter':
      return { kind: 'diameters', readings: nominalReadings(sheet) };
  }
};

/** In the middle of each third, where the model sheet has a minimum to hold them against. */
const nominalReadings = ({ ratedLengthM, lifelineDiameterMm, lifelineMinimumDiameterMm }: ModelSheet) =>
  lifelineMinimumDiameterMm === undefined
    ? []
    : [1, 3, 5].map((sixths) => ({
        positionM: metres(Math.round((ratedLengthM * sixths * 10) / 6) / 10),
        diameterMm: lifelineDiameterMm,
      }));
