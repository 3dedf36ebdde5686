/**
 * The GS1 application identifiers (AIs): how long the data of each is, and of which characters it consists.
 *
 * Source: GS1 General Specifications, chapter 3, as the GS1 Barcode Syntax Dictionary lists them (2026). `N` is digits, `X`
 * the 82 characters of figure 7.11-1, `Y` the 39 of figure 7.11-2, `Z` base64 for URIs; `D6` is YYMMDD; `c` ends in a check
 * digit; `..20` is one to twenty, `[..16]` none to sixteen.
 */

/** An AI, or a pattern of AIs as a regular expression, and the format of its data. */
const formats: readonly (readonly [string, string])[] = [
  ['00', 'N18c'],
  ['0[1-3]', 'N14c'],
  ['10', 'X..20'],
  ['1[1-35-7]', 'D6'],
  ['20', 'N2'],
  ['2[12]', 'X..20'],
  ['235', 'X..28'],
  ['24[01]', 'X..30'],
  ['242', 'N..6'],
  ['243', 'X..20'],
  ['25[01]', 'X..30'],
  ['253', 'N13c X[..17]'],
  ['254', 'X..20'],
  ['255', 'N13c N[..12]'],
  ['30', 'N..8'],
  ['31[0-6][0-5]', 'N6'],
  ['32[0-9][0-5]', 'N6'],
  ['33[0-7][0-5]', 'N6'],
  ['34[0-9][0-5]', 'N6'],
  ['35[0-7][0-5]', 'N6'],
  ['36[0-9][0-5]', 'N6'],
  ['37', 'N..8'],
  ['390[0-9]', 'N..15'],
  ['391[0-9]', 'N3 N..15'],
  ['392[0-9]', 'N..15'],
  ['393[0-9]', 'N3 N..15'],
  ['394[0-3]', 'N4'],
  ['395[0-5]', 'N6'],
  ['40[013]', 'X..30'],
  ['402', 'N17c'],
  ['41[0-7]', 'N13c'],
  ['420', 'X..20'],
  ['421', 'N3 X..9'],
  ['42[246]', 'N3'],
  ['42[35]', 'N3 N[..12]'],
  ['427', 'X..3'],
  ['43[01][01]', 'X..35'],
  ['43[01][2-6]', 'X..70'],
  ['43[01]7', 'X2'],
  ['4308', 'X..30'],
  ['4309', 'N20'],
  ['4318', 'X..20'],
  ['4319', 'X..30'],
  ['4320', 'X..35'],
  ['432[1-3]', 'N1'],
  ['432[45]', 'N10'],
  ['4326', 'N6'],
  ['433[0-3]', 'N6 X[..1]'],
  ['7001', 'N13'],
  ['7002', 'X..30'],
  ['7003', 'N10'],
  ['7004', 'N..4'],
  ['7005', 'X..12'],
  ['7006', 'N6'],
  ['7007', 'N6 N[..6]'],
  ['7008', 'X..3'],
  ['7009', 'X..10'],
  ['7010', 'X..2'],
  ['7011', 'N6 N[..4]'],
  ['702[0-2]', 'X..20'],
  ['7023', 'X..30'],
  ['703[0-9]', 'N3 X..27'],
  ['7040', 'N1 X3'],
  ['7041', 'X..4'],
  ['71[0-7]', 'X..20'],
  ['723[0-9]', 'X2 X..28'],
  ['7240', 'X..20'],
  ['7241', 'N2'],
  ['7242', 'X..25'],
  ['7250', 'N8'],
  ['7251', 'N12'],
  ['7252', 'N1'],
  ['725[349]', 'X..40'],
  ['7255', 'X..10'],
  ['7256', 'X..90'],
  ['7257', 'X..70'],
  ['7258', 'X3'],
  ['8001', 'N14'],
  ['8002', 'X..20'],
  ['8003', 'N14c X[..16]'],
  ['8004', 'X..30'],
  ['8005', 'N6'],
  ['80[02]6', 'N14c N4'],
  ['8007', 'X..34'],
  ['8008', 'N8 N[..4]'],
  ['8009', 'X..50'],
  ['8010', 'Y..30'],
  ['8011', 'N..12'],
  ['8012', 'X..20'],
  ['801[34]', 'X..25'],
  ['801[78]', 'N18c'],
  ['8019', 'N..10'],
  ['8020', 'X..25'],
  ['8030', 'Z..90'],
  ['804[01]', 'N15'],
  ['8042', 'N32'],
  ['8043', 'N18 N[..2]'],
  ['8110', 'X..70'],
  ['8111', 'N4'],
  ['8112', 'X..70'],
  ['8200', 'X..70'],
  ['90', 'X..30'],
  ['9[1-9]', 'X..90'],
];

/** The characters of each kind, as the inside of a regular expression's class. */
const characters = {
  N: '0-9',
  D: '0-9',
  X: '!"%&\'()*+,\\-./0-9:;<=>?A-Z_a-z',
  Y: '#\\-/0-9A-Z',
  Z: '\\-0-9A-Z_a-z=',
} as const;
type Kind = keyof typeof characters;

interface Part {
  readonly kind: Kind;
  readonly least: number;
  readonly most: number;
  readonly endsInCheckDigit: boolean;
}

export interface ApplicationIdentifier {
  readonly ai: string;
  readonly parts: readonly Part[];
  readonly least: number;
  readonly most: number;
}

const partOf = (format: string): Part => {
  const found = /^([NDXYZ])(?:\[\.\.(\d+)\]|\.\.(\d+)|(\d+)(c?))$/.exec(format);
  if (found === null) throw new RangeError(`“${format}” is no format of a GS1 application identifier.`);
  const [, kind, atMost, upTo, exact, check] = found;
  const most = Number(atMost ?? upTo ?? exact);
  const least = atMost === undefined ? (upTo === undefined ? most : 1) : 0;
  return { kind: kind as Kind, least, most, endsInCheckDigit: check === 'c' };
};

const known = formats.map(([pattern, format]) => ({
  pattern: new RegExp(`^${pattern}$`),
  parts: format.split(' ').map(partOf),
}));

/**
 * AIs that begin with these two digits have a predefined length of AI and data together, and need no separator, whether the
 * AI is assigned or not (GS1 General Specifications, figure 7.8.5-2).
 */
const predefinedLengths: ReadonlyMap<string, number> = new Map([
  ['00', 20],
  ...['01', '02', '03'].map((first) => [first, 16] as const),
  ['04', 18],
  ...['11', '12', '13', '14', '15', '16', '17', '18', '19'].map((first) => [first, 8] as const),
  ['20', 4],
  ...['31', '32', '33', '34', '35', '36'].map((first) => [first, 10] as const),
  ['41', 16],
]);

/** The length of AI and data together where it is predefined. */
export const predefinedLengthOf = (text: string): number | undefined =>
  predefinedLengths.get(text.slice(0, 2));

/** How long an AI is that begins with two digits of a predefined length (same figure). */
export const predefinedAiLength = (text: string): number => {
  if (/^3[1-6]/.test(text)) return 4;
  return text.startsWith('41') ? 3 : 2;
};

const remembered = new Map<string, ApplicationIdentifier | undefined>();

export const applicationIdentifier = (ai: string): ApplicationIdentifier | undefined => {
  if (!/^\d{2,4}$/.test(ai)) return undefined;
  if (!remembered.has(ai)) remembered.set(ai, lookUp(ai));
  return remembered.get(ai);
};

const lookUp = (ai: string): ApplicationIdentifier | undefined => {
  const parts = known.find(({ pattern }) => pattern.test(ai))?.parts;
  if (parts === undefined) return undefined;
  const sum = (end: 'least' | 'most') => parts.reduce((total, part) => total + part[end], 0);
  return { ai, parts, least: sum('least'), most: sum('most') };
};

/** The AI with which a text begins. No AI is the beginning of another one. */
export const leadingAi = (text: string): ApplicationIdentifier | undefined =>
  applicationIdentifier(text.slice(0, 2)) ??
  applicationIdentifier(text.slice(0, 3)) ??
  applicationIdentifier(text.slice(0, 4));

/** The first character of `text` that data of this kind cannot have. */
export const foreignCharacter = (text: string, kind: Kind): string | undefined =>
  text.match(foreign[kind])?.[0];

const foreign = Object.fromEntries(
  Object.entries(characters).map(([kind, inside]) => [kind, new RegExp(`[^${inside}]`, 'u')]),
) as Record<Kind, RegExp>;
