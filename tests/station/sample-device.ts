/** A device as the attendant enters it: every element of the marking legible. */
import { markingElements } from '../../src/domain/marking.ts';
import type { InputOf } from '../../src/station/contract.ts';
import { demoStation } from '../support/station-fixture.ts';

/** The 50 ft model of the invented depot. */
export const sampleDevice = (serial: string, code?: string): InputOf<'device.register'> => ({
  modelSheetId: 'M004',
  serial,
  dateOfManufacture: '2026-01',
  marking: markingElements.map((element) => ({
    element,
    state: 'legible' as const,
    text: element,
  })),
  otherCodes: code === undefined ? [] : [{ code, kind: 'maker' }],
});

/** The invented depot with one new device, and a look at its card. */
export const stationWithDevice = async (serial = 'Q26C49001') => {
  const station = await demoStation();
  const { benchId } = await station.expectOutput('device.register', sampleDevice(serial, `QM15${serial}`));
  const card = async () => (await station.expectOutput('device.show', { benchId })).device;
  return { ...station, benchId, card };
};
