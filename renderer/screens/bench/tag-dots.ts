/** The dots of a printer, and how large they are shown. */
import type { OutputOf } from '../../../src/station/contract.ts';

export type Dpi = OutputOf<'printer.list'>['printers'][number]['settings']['dpi'];

export const dpis = ['203', '300', '600'] as const;
export type DpiText = (typeof dpis)[number];

export const dpiOf = (text: DpiText): Dpi => {
  switch (text) {
    case '203':
      return 203;
    case '300':
      return 300;
    case '600':
      return 600;
  }
};

export const dpiText = (dpi: Dpi): DpiText => dpis.find((text) => Number(text) === dpi) ?? '300';

/** Screen pixels for each dot. `fit` shows the whole tag. */
export const zooms = ['fit', '1', '3', '6'] as const;
export type Zoom = (typeof zooms)[number];

/** One step closer; from the closest back to the whole tag. */
export const zoomAfter = (zoom: Zoom): Zoom => zooms[(zooms.indexOf(zoom) + 1) % zooms.length] ?? 'fit';

/** An inch is 25.4 mm (NIST SP 811). */
export const dotsAcross = (mm: number, dpi: Dpi): number => Math.round((mm / 25.4) * dpi);
