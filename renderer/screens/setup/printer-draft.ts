/** A printer while it is being entered: what stands in the fields, and the settings that they make. */
import type { TagKind } from '../../../src/domain/tag-content.ts';
import type { InputOf, OutputOf } from '../../../src/station/contract.ts';
import type { TextKey } from '../../i18n/catalogue.ts';

export type PrinterView = OutputOf<'printer.list'>['printers'][number];
export type PrinterSettings = InputOf<'printer.save'>['settings'];
export type PrinterKind = PrinterSettings['kind'];

/** In the order of how much a person must know about the printer. */
export const printerKinds = ['folder', 'queue', 'ipp', 'thermal'] as const satisfies readonly PrinterKind[];
export const dpiTexts = ['203', '300', '600'] as const;
export const colours = ['monochrome', 'colour'] as const;
export const formats = ['automatic', 'pdf', 'pwg-raster'] as const;
export const stockRules = ['must-match', 'any'] as const;
export const connections = ['network', 'queue'] as const;
export const compressions = ['run-length', 'z64'] as const;

export interface PrinterDraft {
  readonly kind: PrinterKind;
  readonly tagKinds: readonly TagKind[];
  readonly name: string;
  readonly widthMm: string;
  readonly heightMm: string;
  readonly dpi: (typeof dpiTexts)[number];
  readonly colour: (typeof colours)[number];
  readonly offset: { readonly xMm: number; readonly yMm: number };
  readonly folder: string;
  readonly withPicture: boolean;
  /** The name of a queue of the computer, of either kind that has one. */
  readonly queue: string;
  readonly address: string;
  readonly format: (typeof formats)[number];
  readonly loadedStock: (typeof stockRules)[number];
  readonly certificateSha256: string;
  readonly by: (typeof connections)[number];
  readonly host: string;
  readonly port: string;
  readonly darkness: string;
  readonly speed: string;
  readonly compression: (typeof compressions)[number];
}

/** What is commonest on each kind: 203 dots per inch on label printers, 300 elsewhere (common practice, no source). */
const usualDpi = (kind: PrinterKind): PrinterDraft['dpi'] => (kind === 'thermal' ? '203' : '300');

/** 100 × 50 mm takes the tags of most devices; 9100 is the port of raw printing (common practice, no source). */
export const freshDraft: PrinterDraft = {
  kind: 'folder',
  tagKinds: ['status', 'quarantine', 'id'],
  name: '',
  widthMm: '100',
  heightMm: '50',
  dpi: usualDpi('folder'),
  colour: 'monochrome',
  offset: { xMm: 0, yMm: 0 },
  folder: '',
  withPicture: true,
  queue: '',
  address: '',
  format: 'automatic',
  loadedStock: 'must-match',
  certificateSha256: '',
  by: 'network',
  host: '',
  port: '9100',
  darkness: '',
  speed: '',
  compression: 'run-length',
};

/** The fields of another kind; dots that nobody has chosen become those that are usual there. */
export const ofKind = (draft: PrinterDraft, kind: PrinterKind): PrinterDraft => ({
  ...draft,
  kind,
  dpi: draft.dpi === usualDpi(draft.kind) ? usualDpi(kind) : draft.dpi,
});

export const draftOf = ({ settings, tagKinds }: PrinterView): PrinterDraft => {
  const { kind, name, stock, dpi, colour, offset } = settings;
  const shared = {
    ...freshDraft,
    kind,
    tagKinds,
    name,
    widthMm: String(stock.widthMm),
    heightMm: String(stock.heightMm),
    dpi: dpiTexts.find((text) => Number(text) === dpi) ?? usualDpi(kind),
    colour,
    offset,
  };
  switch (kind) {
    case 'folder':
      return { ...shared, folder: settings.folder, withPicture: settings.withPicture };
    case 'queue':
      return { ...shared, queue: settings.queue };
    case 'ipp': {
      const { address, format, loadedStock, certificateSha256 = '' } = settings;
      return { ...shared, address, format, loadedStock, certificateSha256 };
    }
    case 'thermal': {
      const { connection, darkness, speedInchesPerSecond, compression } = settings;
      return {
        ...shared,
        darkness: darkness === undefined ? '' : String(darkness),
        speed: speedInchesPerSecond === undefined ? '' : String(speedInchesPerSecond),
        compression,
        by: connection.by,
        ...(connection.by === 'network'
          ? { host: connection.host, port: String(connection.port) }
          : { queue: connection.queue }),
      };
    }
  }
};

type Field = Exclude<keyof PrinterDraft, 'tagKinds' | 'offset' | 'withPicture'>;
export type PrinterFaults = Partial<Record<Field, TextKey>>;

/** What is wrong with the fields that are seen, by field; empty where the settings can be made. */
export const faultsIn = (draft: PrinterDraft): PrinterFaults => {
  const needed = (field: 'name' | 'folder' | 'queue' | 'address' | 'host'): PrinterFaults =>
    draft[field].trim() === '' ? { [field]: 'screens:form.needed' } : {};
  const side = (field: 'widthMm' | 'heightMm'): PrinterFaults =>
    isWithin(numberIn(draft[field]), 10, 420) ? {} : { [field]: 'screens:printers.fault.side' };
  const whole = (
    field: 'port' | 'darkness' | 'speed',
    least: number,
    most: number,
    isOptional: boolean,
  ): PrinterFaults => {
    const isAbsent = isOptional && draft[field].trim() === '';
    const value = numberIn(draft[field]);
    return isAbsent || (isWithin(value, least, most) && Number.isInteger(value))
      ? {}
      : { [field]: `screens:printers.fault.${field}` };
  };
  const shared = { ...needed('name'), ...side('widthMm'), ...side('heightMm') };
  switch (draft.kind) {
    case 'folder':
      return { ...shared, ...needed('folder') };
    case 'queue':
      return { ...shared, ...needed('queue') };
    case 'ipp': {
      const fingerprint = draft.certificateSha256.replaceAll(/[:\s]/g, '');
      return {
        ...shared,
        ...needed('address'),
        ...(/^([0-9A-Fa-f]{64})?$/.test(fingerprint)
          ? {}
          : { certificateSha256: 'screens:printers.fault.fingerprint' }),
      };
    }
    case 'thermal':
      return {
        ...shared,
        ...(draft.by === 'network'
          ? { ...needed('host'), ...whole('port', 1, 65_535, false) }
          : needed('queue')),
        ...whole('darkness', 0, 30, true),
        ...whole('speed', 1, 14, true),
      };
  }
};

/** Sound only where `faultsIn` finds nothing. */
export const settingsOf = (draft: PrinterDraft): PrinterSettings => {
  const shared = {
    name: draft.name.trim(),
    stock: { widthMm: numberIn(draft.widthMm), heightMm: numberIn(draft.heightMm) },
    dpi: draft.dpi === '203' ? 203 : draft.dpi === '300' ? 300 : 600,
    offset: { ...draft.offset },
    colour: draft.colour,
  } as const;
  switch (draft.kind) {
    case 'folder':
      return { kind: 'folder', ...shared, folder: draft.folder.trim(), withPicture: draft.withPicture };
    case 'queue':
      return { kind: 'queue', ...shared, queue: draft.queue.trim() };
    case 'ipp': {
      const certificateSha256 = draft.certificateSha256.replaceAll(/[:\s]/g, '');
      return {
        kind: 'ipp',
        ...shared,
        address: draft.address.trim(),
        format: draft.format,
        loadedStock: draft.loadedStock,
        ...(certificateSha256 === '' ? {} : { certificateSha256 }),
      };
    }
    case 'thermal':
      return {
        kind: 'thermal',
        ...shared,
        colour: 'monochrome',
        connection:
          draft.by === 'network'
            ? { by: 'network', host: draft.host.trim(), port: numberIn(draft.port) }
            : { by: 'queue', queue: draft.queue.trim() },
        ...(draft.darkness.trim() === '' ? {} : { darkness: numberIn(draft.darkness) }),
        ...(draft.speed.trim() === '' ? {} : { speedInchesPerSecond: numberIn(draft.speed) }),
        compression: draft.compression,
      };
  }
};

/** Where a printer is reached, in a few words. */
export const placeOf = (settings: PrinterView['settings']): string => {
  switch (settings.kind) {
    case 'folder':
      return settings.folder;
    case 'queue':
      return settings.queue;
    case 'ipp':
      return settings.address;
    case 'thermal':
      return settings.connection.by === 'network'
        ? `${settings.connection.host}:${settings.connection.port}`
        : settings.connection.queue;
  }
};

/** Comma or point as decimal mark; not a number where the text is none. */
export const numberIn = (text: string): number => {
  const trimmed = text.trim().replace(',', '.');
  return /^\d{1,5}(\.\d{1,3})?$/.test(trimmed) ? Number(trimmed) : Number.NaN;
};

const isWithin = (value: number, least: number, most: number): boolean => value >= least && value <= most;
