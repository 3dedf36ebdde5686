/** What a person sets for a print destination, as it is stored and checked. */
import { z } from 'zod';

/** A side of the stock, in millimetres: from the smallest label to the long side of A3 (ISO 216). */
const side = z.number().min(10).max(420);

const shared = {
  /** By which people know the printer; it stands in every sentence about it. */
  name: z.string().trim().min(1).max(60),
  /** The size of what is loaded, as it lies in the printer: width across the feed, height along it. */
  stock: z.object({ widthMm: side, heightMm: side }),
  /** Dots per inch of the printer; 300 where it is absent. */
  dpi: z.union([z.literal(203), z.literal(300), z.literal(600)]).default(300),
  /** Moves everything to the right and down (negative: left and up), as found with the calibration pattern; none where it is absent. */
  offset: z
    .object({ xMm: z.number().min(-10).max(10), yMm: z.number().min(-10).max(10) })
    .default({ xMm: 0, yMm: 0 }),
  /** Monochrome where it is absent. */
  colour: z.enum(['monochrome', 'colour']).default('monochrome'),
};

const hostName = z
  .string()
  .trim()
  .min(1)
  .max(253)
  .regex(/^[A-Za-z0-9._:-]+$/);

export const queueNameSchema = z
  .string()
  .trim()
  .min(1)
  .max(127)
  .regex(/^[^-\s#/][^\n\r\t#/]*$/);

export const folderSettingsSchema = z.object({
  kind: z.literal('folder'),
  ...shared,
  folder: z.string().trim().min(1).max(1_000),
  /** The dots beside the document; written where it is absent. */
  withPicture: z.boolean().default(true),
});

export const queueSettingsSchema = z.object({
  kind: z.literal('queue'),
  ...shared,
  /** The printer's name in the operating system. */
  queue: queueNameSchema,
});

export const ippSettingsSchema = z.object({
  kind: z.literal('ipp'),
  ...shared,
  /** `printer.example`, `192.0.2.7:631`, `ipp://…`, `ipps://…`. */
  address: z.string().trim().min(1).max(500),
  /** PDF where the printer takes it, else PWG Raster; or always the one. Automatic where it is absent. */
  format: z.enum(['automatic', 'pdf', 'pwg-raster']).default('automatic'),
  /** Printers vouch for themselves: the SHA-256 fingerprint of the certificate that a person compared with the printer’s own. */
  certificateSha256: z
    .string()
    .transform((text) => text.replaceAll(':', '').toUpperCase())
    .pipe(z.string().regex(/^[0-9A-F]{64}$/))
    .optional(),
  /** `must-match` refuses where the printer says that other stock is loaded; `any` for one that does not know what is in it. */
  loadedStock: z.enum(['must-match', 'any']).default('must-match'),
});

export const thermalSettingsSchema = z.object({
  kind: z.literal('thermal'),
  ...shared,
  connection: z.discriminatedUnion('by', [
    z.object({
      by: z.literal('network'),
      host: hostName,
      /** 9100 where it is absent, the port of raw printing (common practice, no source). */
      port: z.int().min(1).max(65_535).default(9_100),
    }),
    z.object({ by: z.literal('queue'), queue: queueNameSchema }),
  ]),
  /** 0 to 30, on the scale of the label language; the printer’s own setting where it is absent. */
  darkness: z.int().min(0).max(30).optional(),
  /** Inches per second, 1 to 14, as the label language counts; the printer’s own setting where it is absent. */
  speedInchesPerSecond: z.int().min(1).max(14).optional(),
  /** `run-length`, which every such printer reads, where it is absent; `z64` is smaller and carries a checksum. */
  compression: z.enum(['run-length', 'z64']).default('run-length'),
});

export const destinationSettingsSchema = z.discriminatedUnion('kind', [
  folderSettingsSchema,
  queueSettingsSchema,
  ippSettingsSchema,
  thermalSettingsSchema,
]);

export type FolderSettings = z.infer<typeof folderSettingsSchema>;
export type QueueSettings = z.infer<typeof queueSettingsSchema>;
export type IppSettings = z.infer<typeof ippSettingsSchema>;
export type ThermalSettings = z.infer<typeof thermalSettingsSchema>;
export type DestinationSettings = z.infer<typeof destinationSettingsSchema>;
