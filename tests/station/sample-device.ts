/** A device as the attendant enters it: every element of the marking legible. */
import { markingElements } from '../../src/domain/marking.ts';
import type { InputOf } from '../../src/station/contract.ts';

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
