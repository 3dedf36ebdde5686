/** What a maker's own code means at the station, through the contract: whose device it is, and what speaks against it. */
import { describe, expect, test } from 'vitest';
import type { InputOf } from '../../src/station/contract.ts';
import { demo, demoStation } from '../support/station-fixture.ts';
import { sampleDevice } from './sample-device.ts';

const [GS, RS, EOT] = ['\x1d', '\x1e', '\x04'];

/** GTINs under 952, which GS1 keeps for demonstrations; the model sheet M004 of the invented depot has the first. */
const gtin = '09520000000042';
const otherGtin = '09520000000059';
const code = `]C101${gtin}1126031510L7${GS}21Q26C49001`;

const withDevice = async (codes: readonly string[] = [code], serial = 'Q26C49001') => {
  const station = await demoStation();
  const { benchId } = await station.expectOutput('device.register', {
    ...sampleDevice(serial),
    otherCodes: codes.map((each) => ({ code: each, kind: 'maker' as const })),
  });
  const meaningOf = (text: string) => station.expectOutput('scan.interpret', { text });
  return { ...station, benchId, meaningOf };
};

describe('a maker’s code that is bound to a device', () => {
  test('opens it from every scanner and in every order, and stands in the record in one form', async () => {
    const { meaningOf, expectOutput, benchId } = await withDevice();
    const { device } = await expectOutput('device.show', { benchId });
    expect(device.otherCodes).toEqual([{ code: `(01)${gtin}(10)L7(11)260315(21)Q26C49001`, kind: 'maker' }]);
    for (const text of [
      code,
      `]d2${GS}21Q26C49001${GS}01${gtin}10L7${GS}11260315`,
      `01${gtin}1126031510L7${GS}21Q26C49001`,
      `(21)Q26C49001 (01)${gtin} (10)L7 (11)260315`,
      `[)>${RS}05${GS}01${gtin}${GS}11260315${GS}10L7${GS}21Q26C49001${RS}${EOT}`,
    ]) {
      expect(await meaningOf(text)).toMatchObject({
        meaning: 'device',
        by: 'other code',
        device: { benchId },
      });
    }
  });

  test('of format 06 opens it too', async () => {
    const { meaningOf, benchId } = await withDevice([`[)>${RS}06${GS}SW10${GS}1PA-1${RS}${EOT}`], 'W10');
    expect(await meaningOf(`]d1[)>${RS}06${GS}1PA-1${GS}SW10${RS}`)).toMatchObject({
      meaning: 'device',
      device: { benchId },
    });
  });

  test('opens nothing with another lot, another date, or one element less', async () => {
    const { meaningOf } = await withDevice([code], '');
    for (const text of [
      `]C101${gtin}1126031510L8${GS}21Q26C49001`,
      `]C101${gtin}1126031610L7${GS}21Q26C49001`,
      `]C101${gtin}10L7${GS}21Q26C49001`,
      `]C101${gtin}1126031510L721Q26C49001`,
    ]) {
      expect(await meaningOf(text)).toMatchObject({ meaning: 'unknown' });
    }
  });

  test('with a symbology identifier before a plain serial number is bound and found without it', async () => {
    const { meaningOf, benchId } = await withDevice([']C0QM152649001']);
    for (const text of ['QM152649001', ']C0QM152649001', ']A0QM152649001'])
      expect(await meaningOf(text)).toMatchObject({ meaning: 'device', device: { benchId } });
  });

  test('is bound to one device alone, in whatever form it comes', async () => {
    const { expectOutput, expectError } = await withDevice();
    const other = await expectOutput('device.register', sampleDevice('q26c-49001'));
    const refused = await expectError('device.bind-code', {
      benchId: other.benchId,
      otherCode: { code: `(21)Q26C49001(10)L7(11)260315(01)${gtin}`, kind: 'maker' },
    });
    expect(refused.code).toBe('code-taken');
  });
});

describe('a maker’s code that is bound to no device', () => {
  test('opens the one device with its serial number whose model sheet has its reference', async () => {
    const { meaningOf, benchId } = await withDevice([]);
    expect(await meaningOf(code)).toMatchObject({
      meaning: 'device',
      by: 'serial number',
      device: { benchId },
    });
  });

  test('only suggests a device where the reference says nothing, or the serial number is written otherwise', async () => {
    const { meaningOf, benchId } = await withDevice([]);
    const suggestion = {
      meaning: 'suggestion',
      devices: [{ because: 'serial number', device: { benchId } }],
      data: { identification: { serial: expect.any(String) } },
    };
    expect(await meaningOf(`]C121Q26C49001`)).toMatchObject(suggestion);
    expect(await meaningOf(`]C101${gtin}21q26c49001`)).toMatchObject(suggestion);
    expect(await meaningOf(`[)>${RS}06${GS}SQ26C49001${GS}1PSL-50${RS}${EOT}`)).toMatchObject(suggestion);
  });

  test('opens nothing where its reference is another model’s: then it is unknown, with what it says', async () => {
    const { meaningOf } = await withDevice([]);
    expect(await meaningOf(`]C101${otherGtin}21Q26C49001`)).toEqual({
      meaning: 'unknown',
      text: `(01)${otherGtin}(21)Q26C49001`,
      data: {
        source: 'GS1 element string',
        identification: { gtin: otherGtin, serial: 'Q26C49001' },
        names: 'one device',
        separatorsMayBeLost: false,
      },
    });
  });

  test('opens nothing by itself where its separators may be lost', async () => {
    const { meaningOf } = await withDevice([], 'SN7711260315');
    expect(await meaningOf(`]C101${gtin}21SN7711260315`)).toMatchObject({
      meaning: 'suggestion',
      data: { separatorsMayBeLost: true },
    });
    expect(await meaningOf(`]C101${gtin}21SN7711260315${GS}`)).toMatchObject({ meaning: 'device' });
  });

  test('settles the century of its dates by the station’s own calendar', async () => {
    const { meaningOf, clock } = await withDevice([]);
    const made = async () => {
      const meaning = await meaningOf(`]C101${otherGtin}1177010021N`);
      return meaning.meaning === 'unknown' && meaning.data?.identification.dateOfManufacture;
    };
    // 77 is 51 years ahead of 2026, and 50 ahead of 2027 (GS1 General Specifications §7.12).
    expect(await made()).toEqual({ on: '1977-01-31', dayGiven: false });
    clock.advance({ days: 365 });
    expect(await made()).toEqual({ on: '2077-01-31', dayGiven: false });
  });
});

describe('a code that every device of a model carries', () => {
  test('is bound to none: at registration, and later', async () => {
    const { expectError, benchId, meaningOf } = await withDevice();
    for (const text of [
      `]C101${gtin}`,
      ']E09520000000042',
      `(01)${gtin}(10)L7`,
      `[)>${RS}06${GS}1PA-1${RS}${EOT}`,
    ]) {
      const otherCode = { code: text, kind: 'maker' as const };
      expect((await expectError('device.bind-code', { benchId, otherCode })).code).toBe('code-names-model');
      const registration = { ...sampleDevice('Q26C49002'), otherCodes: [otherCode] };
      expect((await expectError('device.register', registration)).code).toBe('code-names-model');
    }
    expect(await meaningOf(']E09520000000042')).toMatchObject({
      meaning: 'unknown',
      data: { names: 'its model', identification: { gtin } },
    });
  });
});

describe('a code that is too short without what the scanner says of the symbol', () => {
  test('is bound to none: at registration, and later', async () => {
    const { expectError, benchId } = await withDevice();
    const otherCode = { code: ']C0A7', kind: 'other' as const };
    const refused = {
      code: 'code-length',
      sentence: expect.stringContaining('“A7” cannot be bound to a device: a code has 3 to 200 characters'),
    };
    expect(await expectError('device.bind-code', { benchId, otherCode })).toMatchObject({
      ...refused,
      field: 'otherCode',
    });
    const registration = { ...sampleDevice('Q26C49002'), otherCodes: [otherCode] };
    expect(await expectError('device.register', registration)).toMatchObject(refused);
  });
});

describe('a code that says otherwise than the device', () => {
  const register = (serial: string, text: string): InputOf<'device.register'> => ({
    ...sampleDevice(serial),
    otherCodes: [{ code: text, kind: 'maker' }],
  });

  test('is refused at registration and when it is bound: it may be off another device', async () => {
    const { expectError, expectOutput, benchId } = await withDevice([]);
    expect(await expectError('device.register', register('Q26C49002', code))).toMatchObject({
      code: 'code-serial-differs',
      field: 'otherCodes',
    });
    expect(
      await expectError('device.register', register('Q26C49002', `]C101${otherGtin}21Q26C49002`)),
    ).toMatchObject({ code: 'code-model-differs' });
    expect(
      await expectError('device.bind-code', {
        benchId,
        otherCode: { code: `]C101${gtin}21Q26C49999`, kind: 'maker' },
      }),
    ).toMatchObject({ code: 'code-serial-differs' });
    // Leading zeros, hyphens and letter case are the writing of it, not another number.
    await expectOutput('device.register', register('q26c-49003', `]C101${gtin}2100Q26C49003`));
    await expectOutput('device.register', register('', `]C101${gtin}21Q26C49004`));
  });
});

describe('a damaged code', () => {
  test('is answered with a sentence, opens nothing and is bound to nothing', async () => {
    const { station, meaningOf, expectError, benchId } = await withDevice();
    const damaged = [
      [`]C10109520000000043`, 'gs1-check-digit'],
      [`]C18999X`, 'gs1-ai-unknown'],
      [`[)>06SQ26C490011PA-1`, 'transfer-separators-lost'],
      [`]C110${'L'.repeat(20)}21Q26C49001`, 'gs1-separator-lost'],
      ['Q26\0C49001', 'scan-unseen-character'],
    ] as const;
    for (const [text, fault] of damaged) {
      expect(await meaningOf(text)).toMatchObject({ meaning: 'malformed', code: fault });
      const refused = await expectError('device.bind-code', {
        benchId,
        otherCode: { code: text, kind: 'maker' },
      });
      expect(refused.code).toBe(fault);
    }
    for (const text of ['', '   ', 'A'.repeat(4001)])
      expect(await meaningOf(text)).toMatchObject({ meaning: 'malformed' });
    expect(await meaningOf('A'.repeat(4000))).toMatchObject({ meaning: 'unknown' });
    const spanish = await station.call({
      session: 'window',
      operation: 'scan.interpret',
      input: { text: ']C18999X' },
      language: 'es',
    });
    expect(spanish).toMatchObject({
      ok: true,
      output: { sentence: expect.stringContaining('no es un identificador de aplicación GS1') },
    });
  });
});

describe('a badge', () => {
  test('is the same with a symbology identifier before it, at the desk and when it is given out', async () => {
    const { expectOutput, meaningOf } = await withDevice([]);
    expect(await meaningOf(`]C0${demo.attendant}`)).toMatchObject({
      meaning: 'badge',
      badge: demo.attendant,
    });
    await expectOutput('session.sign-in', { badge: demo.administrator });
    await expectOutput('person.add', { name: 'Ada Lorn', badge: ']C0CR20028', roles: ['user'] });
    expect(await meaningOf('CR20028')).toMatchObject({ meaning: 'badge', name: 'Ada Lorn' });
  });

  test('stays one where its text happens to read as a maker’s code, whole or damaged', async () => {
    const { expectOutput, meaningOf } = await withDevice([]);
    await expectOutput('session.sign-in', { badge: demo.administrator });
    for (const [name, badge] of [
      ['Ada Lorn', `01${otherGtin}`],
      ['Ines Vard', '(01)09520000000043'],
    ] as const) {
      await expectOutput('person.add', { name, badge, roles: ['user'] });
      expect(await meaningOf(badge)).toMatchObject({ meaning: 'badge', name });
    }
  });
});

describe('three thousand texts near a bound code', () => {
  test('open that device only where every character of its code is there (invariant 9)', async () => {
    const { meaningOf, benchId } = await withDevice([code], '');
    let seed = 7;
    const below = (limit: number) => {
      // Lehmer generator with the multiplier of Park and Miller.
      seed = (seed * 48_271) % 2_147_483_647;
      return seed % limit;
    };
    const characters = `0123456789QCL()${GS}${RS} \0A`;
    const damaged = Array.from({ length: 3000 }, () => {
      const at = 3 + below(code.length - 3);
      const other = characters[below(characters.length)]!;
      const rest = code.slice(at + below(2));
      return code.slice(0, at) + (below(3) === 0 ? '' : other) + rest;
    });
    const wrong: string[] = [];
    let opened = 0;
    for (const text of damaged) {
      const meaning = await meaningOf(text);
      if (meaning.meaning !== 'device') continue;
      opened += 1;
      const isSame = text.slice(3).replaceAll(GS, '').trim() === code.slice(3).replaceAll(GS, '');
      if (!isSame || meaning.device.benchId !== benchId) wrong.push(JSON.stringify(text));
    }
    expect(wrong).toEqual([]);
    expect(opened).toBeGreaterThan(20);
  }, 60_000);
});
