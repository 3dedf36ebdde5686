/** Invented tags for the tests. */
import { benchIdFrom } from '../../src/domain/bench-id/bench-id.ts';
import { calendarDate } from '../../src/domain/brand.ts';
import type { Language, Message } from '../../src/domain/message.ts';
import type { Zone } from '../../src/domain/procedure.ts';
import type { BinLabel, IdLabel, QuarantineTag, StatusTag } from '../../src/domain/tag-content.ts';

export const benchId = benchIdFrom([19, 7, 20, 3, 29, 4]);

const both = (en: string, es: string): Message => ({ en, es });

const shared = {
  benchId,
  seal: { mark: 'H4RP', code: '9T4QK2MX' },
  tagNumber: 4,
  manufacturer: 'Northfell',
  model: 'CR-15',
  serial: 'NF-204417',
  ratedLength: '15.24 m',
  station: 'Harrow Point depot',
};

export const statusTag = (languages: Language[], changes: Partial<StatusTag> = {}): StatusTag => ({
  kind: 'status',
  ...shared,
  languages,
  inspectedOn: calendarDate('2026-11-24'),
  dueOn: calendarDate('2027-11-24'),
  inspectorMark: 'R. Ibarra',
  ...changes,
});

/** As long as people write such things. */
export const longStatusTag = (languages: Language[]): StatusTag =>
  statusTag(languages, {
    tagNumber: 128,
    manufacturer: 'Northfell Höhensicherung & Cía.',
    model: 'Cable retractor CR-15 stainless',
    serial: 'NF-2044-1700-AB-99',
    inspectorMark: 'Rosalía Ibarra Muñoz',
    station: 'Harrow Point depot, tool room 2',
    inspectedOn: calendarDate('2026-12-03'),
    dueOn: calendarDate('2027-12-03'),
  });

export const reasons: readonly { zone: Zone; sentence: Message }[] = [
  {
    zone: 'marking',
    sentence: both(
      'Date of manufacture on the marking cannot be read.',
      'La fecha de fabricación del marcado no se puede leer.',
    ),
  },
  {
    zone: 'lifeline',
    sentence: both('Lifeline crushed 3.2 m from the hook.', 'Cable aplastado a 3,2 m del gancho.'),
  },
  {
    zone: 'brake',
    sentence: both(
      'Brake slow to engage near full payout.',
      'El freno tarda en actuar cerca de la extensión total.',
    ),
  },
  {
    zone: 'upper-hook',
    sentence: both(
      'Corrosion on the upper hook: refer to the manufacturer.',
      'Corrosión en el gancho superior: consulte al fabricante.',
    ),
  },
  {
    zone: 'housing',
    sentence: both(
      'Housing cracked: the inside may be damaged.',
      'Carcasa agrietada: el interior puede estar dañado.',
    ),
  },
  {
    zone: 'fasteners',
    sentence: both('A screw of the housing is missing.', 'Falta un tornillo de la carcasa.'),
  },
  {
    zone: 'indicator',
    sentence: both(
      'Load indicator deployed: counts as a fall.',
      'Indicador de carga activado: cuenta como una caída.',
    ),
  },
  {
    zone: 'lower-hook',
    sentence: both(
      'Gate of the lower hook does not lock by itself.',
      'El cierre del gancho inferior no se bloquea solo.',
    ),
  },
  {
    zone: 'termination',
    sentence: both('Thimble out of place at the termination.', 'Guardacabo desplazado en el terminal.'),
  },
  {
    zone: 'retraction',
    sentence: both(
      'Lifeline does not retract fully under tension.',
      'El cable no se recoge del todo bajo tensión.',
    ),
  },
  {
    zone: 'history',
    sentence: both(
      'Fall or impact since the last inspection.',
      'Caída o impacto desde la última inspección.',
    ),
  },
  {
    zone: 'whole-device',
    sentence: both(
      'Signs of a field repair: ask the manufacturer.',
      'Señales de una reparación: pregunte al fabricante.',
    ),
  },
];

export const quarantineTag = (
  languages: Language[],
  reasonCount: number,
  changes: Partial<QuarantineTag> = {},
): QuarantineTag => ({
  kind: 'quarantine',
  ...shared,
  languages,
  removedOn: calendarDate('2026-11-24'),
  removedBy: 'R. Ibarra',
  reasons: reasons.slice(0, reasonCount),
  keptAt: both('Red cage, bay 2', 'Jaula roja, puesto 2'),
  evidence: [
    {
      reasons: Array.from({ length: reasonCount }, (_, index) => index + 1),
      anyOf: [
        both(
          'Certificate of the manufacturer or its authorised centre',
          'Certificado del fabricante o de su centro autorizado',
        ),
      ],
    },
  ],
  beforeReturn: [
    both(
      'New documented inspection by a competent person',
      'Nueva inspección documentada por una persona competente',
    ),
  ],
  ...changes,
});

const repairCertificate = both(
  'Manufacturer’s repair and recertification certificate',
  'Certificado de reparación y recertificación del fabricante',
);

/** What the twelve reasons ask for, each piece for its own. */
export const evidenceOfTwelve: QuarantineTag['evidence'] = [
  { reasons: [1], anyOf: [both('Manufacturer’s re-marking', 'Nuevo marcado del fabricante')] },
  { reasons: [2, 3, 4, 5, 6, 7, 8, 9, 10, 12], anyOf: [repairCertificate] },
  {
    reasons: [7, 11],
    anyOf: [both('Closed investigation of the fall', 'Investigación de la caída cerrada')],
  },
  {
    reasons: [11],
    anyOf: [both('Manufacturer’s written word', 'Palabra escrita del fabricante'), repairCertificate],
  },
];

export const idLabel: IdLabel = { kind: 'id', benchId };

export const binLabel = (languages: Language[], changes: Partial<BinLabel> = {}): BinLabel => ({
  kind: 'bin',
  code: 'RC02',
  place: both('Red cage, bay 2', 'Jaula roja, puesto 2'),
  station: 'Harrow Point depot',
  languages,
  ...changes,
});

export const longBinLabel = (languages: Language[]): BinLabel =>
  binLabel(languages, {
    code: 'QUARANTINE12',
    place: both(
      'Locked quarantine cage behind the tool room, upper shelf, bay 12',
      'Jaula de cuarentena cerrada detrás del cuarto de herramientas, estante superior, puesto 12',
    ),
    station: 'Harrow Point depot, tool room 2',
  });
