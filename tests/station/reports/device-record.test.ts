/** The record of a device over its life, read by poppler: every field of EN 365, and ten inspections as they were signed. */
import { describe, expect, test } from 'vitest';
import { type BenchId, metres } from '../../../src/domain/brand.ts';
import { canReadPdf, fontsOf, infoOf, madeReport, textOf } from '../../support/report-text.ts';
import { demo, demoStation } from '../../support/station-fixture.ts';
import { walk } from '../../support/walk.ts';
import { fileOf, runOf } from '../exchange/import-support.ts';

const list = `Maker;Model;Serial;Made;Purchased on;First use;Length;User;Last inspection;Inspected by;Result;Notes
Norvane;Lode 6;LIFE-0001;2021-05;2021-06;2021-07-02;6 m;Wren Castellan;2024-04-30;A. Fenwick;pass;Paper card 17
`;

/** A device with a declared inspection, nine that it passed a week apart, and a tenth that removed it. */
const deviceWithTenInspections = async () => {
  const station = await demoStation();
  expect(await runOf(station, fileOf(list))).toMatchObject({ state: 'imported' });
  const { devices } = await station.expectOutput('device.list', { search: 'LIFE-0001' });
  const { benchId } = devices[0]!;
  const signed: { inspection: number; on: string; dueOn: string | undefined }[] = [];
  for (let count = 1; count <= 10; count += 1) {
    station.clock.advance({ days: 7 });
    const walked = await walk(
      station,
      benchId,
      count < 10
        ? {}
        : {
            'lifeline.shape': {
              kind: 'defects',
              findings: [{ defect: 'crushing', positionM: metres(2.5), note: 'near the middle' }],
            },
          },
    );
    const result = await station.expectOutput('inspection.sign', {
      inspection: walked.inspection,
      pin: demo.pin,
    });
    const { on, dueOn } = result.inspection.signed!;
    signed.push({ inspection: walked.inspection, on, dueOn });
  }
  return { ...station, benchId, signed };
};

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const inWords = (date: string): string => {
  const [year, month, day] = date.split('-');
  return `${Number(day)} ${months[Number(month) - 1]} ${year}`;
};

describe.runIf(canReadPdf)('the record of a device with ten inspections', () => {
  test('has every field of EN 365:2004 §4.7 (from memory) with what the register knows', async () => {
    const { expectOutput, benchId, signed } = await deviceWithTenInspections();
    const { path } = await madeReport({ expectOutput }, { of: { kind: 'device', benchId }, language: 'en' });
    const text = textOf(path);
    const { device } = await expectOutput('device.show', { benchId });
    // Each field of the standard's list, in its order, with the words under which the report has it.
    const fields: Readonly<Record<string, string>> = {
      product: 'Product Cable self-retracting lifeline',
      'model or type': 'Model or type Lode 6',
      manufacturer: 'Manufacturer Norvane',
      'contact of the manufacturer': `Manufacturer’s contact ${device.modelSheet.manufacturerContact}`,
      'serial or batch number': 'Serial or batch number LIFE-0001',
      'year of manufacture': 'Year of manufacture May 2021',
      'date of purchase': 'Date of purchase Jun 2021',
      'date first put into use': 'Date first put into use 2 Jul 2021',
      user: 'User Wren Castellan',
    };
    for (const [field, words] of Object.entries(fields)) expect(text, field).toContain(words);
    expect(signed).toHaveLength(10);
    for (const { inspection, on, dueOn } of signed.slice(0, 9)) {
      // Date, reason, details, competent person with signature, next due date.
      const row = new RegExp(
        `${inWords(on)} Periodic examination ${inspection} Pass: in service Teo Arandal Signed, event \\d+ ${inWords(dueOn!)}`,
      );
      expect(text).toMatch(row);
    }
    const last = signed[9]!;
    expect(text).toMatch(
      new RegExp(
        `${inWords(last.on)} Periodic examination ${last.inspection} Remove from service • .*2\\.5 m.* near the middle Teo Arandal Signed, event \\d+ –`,
      ),
    );
    expect(text).toContain('Repairs No repair is recorded.');
  });

  test('shows what a list declared apart, under words that it was not made with this program', async () => {
    const { expectOutput, benchId } = await deviceWithTenInspections();
    const { path } = await madeReport(
      { expectOutput },
      { of: { kind: 'device', benchId }, language: 'both' },
    );
    const text = textOf(path);
    expect(text).toContain('Declared, not made with this program / Declaradas, no hechas con este programa');
    expect(text).toContain(
      '30 Apr 2024 30 abr 2024 DECLARED DECLARADA passed superada “Paper card 17” A. Fenwick',
    );
    expect(text).not.toContain('Periodic examination 0');
    expect(text.indexOf('DECLARED')).toBeGreaterThan(text.lastIndexOf('Periodic examination'));
  });

  test('has every tag that it had, and says why it is out of service', async () => {
    const { expectOutput, benchId, signed } = await deviceWithTenInspections();
    const { path, pages } = await madeReport(
      { expectOutput },
      { of: { kind: 'device', benchId }, language: 'es', paper: 'letter' },
    );
    const text = textOf(path);
    const { device } = await expectOutput('device.show', { benchId });
    expect(text).toContain(`Por qué está fuera de servicio ${device.reasons[0]!.sentence.es}`);
    for (let tag = 1; tag <= 9; tag += 1) expect(text).toContain(`${tag} Etiqueta de estado`);
    expect(text).toContain('10 Etiqueta de cuarentena');
    expect(text).toContain('corresponde al equipo ahora');
    expect(text.match(/Examen periódico \d+/g)).toHaveLength(signed.length);
    expect(Number(infoOf(path).Pages)).toBe(pages);
    expect(infoOf(path)['Page size']).toContain('letter');
    expect(fontsOf(path).every(({ embedded }) => embedded)).toBe(true);
  });
});

test.runIf(canReadPdf)(
  'the user of EN 365 is who regularly uses it, who has it now, and everybody who had it, from the desk',
  async () => {
    const { expectOutput, clock } = await demoStation();
    await expectOutput('session.sign-in', { badge: demo.administrator });
    const userNamed = async (name: string, badge: string) => ({
      ...(await expectOutput('person.add', { name, badge, roles: ['user'] })),
      name,
    });
    const one = await userNamed('Mara Quill', 'HP20010');
    const other = await userNamed('Ivo Sandler', 'HP20011');
    // Ready to go out in the invented depot, by `demo-data/fleet.json`.
    const benchId = 'MM68GV91MM' as BenchId;
    const no = (question: string) => ({ question, said: 'no' as const });
    const answers = [no('fall'), no('exposure'), no('questionable')];
    const out = async (userId: string) => {
      const done = await expectOutput('custody.check-out', {
        userId,
        benchIds: [benchId],
        preUse: { language: 'en' },
      });
      expect(done.refused).toEqual([]);
    };
    const back = async () => {
      const done = await expectOutput('custody.check-in', { benchId, answers });
      expect(done.held).toBe(false);
    };
    // Out on 10 March and back on the 11th, out to another person on the 12th, who hands it back the same day; out to the
    // first again on the 13th.
    await out(one.personId);
    clock.advance({ days: 1 });
    await back();
    clock.advance({ days: 1 });
    await out(other.personId);
    await back();
    clock.advance({ days: 1 });
    await out(one.personId);
    const { path } = await madeReport({ expectOutput }, { of: { kind: 'device', benchId }, language: 'en' });
    const text = textOf(path);
    expect(text).toMatch(new RegExp(`User (?:\\S+ \\S+ )?${one.name} has it now`));
    expect(text).toContain(`${one.name} 2 10 Mar 2026 has it now`);
    expect(text).toContain(`${other.name} 1 12 Mar 2026 12 Mar 2026`);
  },
);

test.runIf(canReadPdf)(
  'a removal without an inspection stands in the record with its reason and who made it',
  async () => {
    const { expectOutput } = await demoStation();
    const { devices } = await expectOutput('device.list', { standing: ['in service'], limit: 1 });
    const { benchId } = devices[0]!;
    await expectOutput('device.remove', { benchId, ground: 'damage', note: 'Housing cracked at the handle' });
    const { path } = await madeReport({ expectOutput }, { of: { kind: 'device', benchId }, language: 'en' });
    expect(textOf(path)).toMatch(
      /10 Mar 2026 • Damage seen: Housing cracked at the handle Teo Arandal event \d+/,
    );
  },
);
