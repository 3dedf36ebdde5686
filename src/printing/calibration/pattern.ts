/** The calibration pattern of a stock as plain strokes: a frame, a cross, and two rulers that number the distance from the edges. */

export interface Stroke {
  readonly x1Mm: number;
  readonly y1Mm: number;
  readonly x2Mm: number;
  readonly y2Mm: number;
  readonly widthMm: number;
}

export interface PatternSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** From the nominal edge of the stock. */
export const frameMm = 1;

const lineMm = 0.2;
const crossMm = 6;
/** Where the rulers run: so far from the other edge that they stay on the stock, and near enough for the smallest stock. */
const rulerMm = 3;
const longTickMm = 1.8;
/** From the ruler to its numbers, clear of the longest tick so that none looks like a minus. */
const numberMm = longTickMm + 0.8;
const digitWidthMm = 0.9;
const digitHeightMm = 1.6;
const digitGapMm = 0.5;

/**
 * The ruler along the top counts millimetres from the nominal left edge, the ruler along the left from the nominal top
 * edge; both run from edge to edge, so that the cut itself points at a number. A tick each millimetre, longer each five,
 * a number each ten, or each five on stock under 60 mm.
 */
export const calibrationPattern = ({ widthMm, heightMm }: PatternSize): Stroke[] => {
  const stroke = (x1Mm: number, y1Mm: number, x2Mm: number, y2Mm: number): Stroke => ({
    x1Mm,
    y1Mm,
    x2Mm,
    y2Mm,
    widthMm: lineMm,
  });
  const right = widthMm - frameMm;
  const bottom = heightMm - frameMm;
  const [centreX, centreY] = [widthMm / 2, heightMm / 2];
  return [
    stroke(frameMm, frameMm, right, frameMm),
    stroke(right, frameMm, right, bottom),
    stroke(right, bottom, frameMm, bottom),
    stroke(frameMm, bottom, frameMm, frameMm),
    stroke(centreX - crossMm / 2, centreY, centreX + crossMm / 2, centreY),
    stroke(centreX, centreY - crossMm / 2, centreX, centreY + crossMm / 2),
    stroke(0, rulerMm, widthMm, rulerMm),
    stroke(rulerMm, 0, rulerMm, heightMm),
    ...ticks(widthMm).flatMap(({ atMm, lengthMm, number }) => [
      stroke(atMm, rulerMm, atMm, rulerMm + lengthMm),
      ...(meetsCross(atMm, widthMm, heightMm)
        ? []
        : numberStrokes(number, atMm - numberWidthMm(number) / 2, rulerMm + numberMm)),
    ]),
    ...ticks(heightMm).flatMap(({ atMm, lengthMm, number }) => [
      stroke(rulerMm, atMm, rulerMm + lengthMm, atMm),
      ...numberStrokes(number, rulerMm + numberMm, atMm - digitHeightMm / 2),
    ]),
  ];
};

/** On low stock the numbers of the upper ruler reach down to the cross. */
const meetsCross = (atMm: number, widthMm: number, heightMm: number): boolean =>
  Math.abs(atMm - widthMm / 2) < crossMm && heightMm / 2 - crossMm / 2 < rulerMm + numberMm + digitHeightMm;

interface Tick {
  readonly atMm: number;
  readonly lengthMm: number;
  /** Empty where the tick has none: between the numbers, and at the ends, where numbers would be cut or meet. */
  readonly number: string;
}

const ticks = (endMm: number): Tick[] =>
  Array.from({ length: Math.floor(endMm) + 1 }, (_, atMm) => ({
    atMm,
    lengthMm: atMm % 10 === 0 ? longTickMm : atMm % 5 === 0 ? 1.4 : 0.8,
    number: atMm % (endMm < 60 ? 5 : 10) === 0 && atMm >= 10 && atMm <= endMm - 3 ? String(atMm) : '',
  }));

const numberWidthMm = (number: string): number =>
  number.length * digitWidthMm + (number.length - 1) * digitGapMm;

/** The seven segments of a digit, from the top clockwise and the middle last, on a box of 1 × 2. */
const segments = [
  [0, 0, 1, 0],
  [1, 0, 1, 1],
  [1, 1, 1, 2],
  [0, 2, 1, 2],
  [0, 1, 0, 2],
  [0, 0, 0, 1],
  [0, 1, 1, 1],
] as const;

const digits = ['012345', '12', '01346', '01236', '1256', '02356', '023456', '012', '0123456', '012356'];

const numberStrokes = (text: string, xMm: number, yMm: number): Stroke[] =>
  [...text].flatMap((digit, index) => {
    const left = xMm + index * (digitWidthMm + digitGapMm);
    return [...(digits[Number(digit)] ?? '')].flatMap((segment) => {
      const ends = segments[Number(segment)];
      if (ends === undefined) return [];
      const [x1, y1, x2, y2] = ends;
      return {
        x1Mm: left + x1 * digitWidthMm,
        y1Mm: yMm + (y1 * digitHeightMm) / 2,
        x2Mm: left + x2 * digitWidthMm,
        y2Mm: yMm + (y2 * digitHeightMm) / 2,
        widthMm: lineMm,
      };
    });
  });
