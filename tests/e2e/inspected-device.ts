/** A device that was registered and inspected just now, made at the station of a window by whoever is signed in there. */
import type { BenchId } from '../../src/domain/brand.ts';
import { markingElements } from '../../src/domain/marking.ts';
import { goodAnswer, procedure } from '../support/shipped-rules.ts';
import { ask } from './held-depot.ts';
import { pin } from './prepared-depot.ts';
import type { Visit } from './visit.ts';

type Window = Pick<Visit, 'page'>;

export interface Walked {
  readonly inspection: {
    readonly inspection: number;
    readonly checks: readonly string[];
    readonly device: { readonly ratedLengthM: number };
  };
}

export const signAllGood = async (window: Window, begun: Walked): Promise<void> => {
  const { inspection, checks, device } = begun.inspection;
  for (const key of checks) {
    const check = procedure.checks.find((each) => each.key === key)!;
    const answer = goodAnswer(check, device.ratedLengthM);
    await ask(window, 'inspection.answer', { inspection, check: key, answer });
  }
  await ask(window, 'inspection.sign', { inspection, pin });
};

export const inspectedDevice = async (window: Window, serial: string): Promise<BenchId> => {
  const { modelSheets } = await ask<{ modelSheets: readonly { modelSheetId: string; model: string }[] }>(
    window,
    'model-sheet.list',
  );
  const { modelSheetId } = modelSheets.find(({ model }) => model.startsWith('Stayline'))!;
  const { benchId } = await ask<{ benchId: BenchId }>(window, 'device.register', {
    modelSheetId,
    serial,
    dateOfManufacture: '2025-03',
    marking: markingElements.map((element) => ({ element, state: 'legible' })),
  });
  await signAllGood(window, await ask<Walked>(window, 'inspection.start', { benchId }));
  return benchId;
};
