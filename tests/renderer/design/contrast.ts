/** Contrast of two colours as WCAG 2.2 defines it: relative luminance, and the ratio of two of them. */

/** Red, green and blue from 0 to 255. */
export type Colour = readonly [number, number, number];

/** Of `#rgb` or `#rrggbb`. */
export const colourOf = (text: string): Colour => {
  const digits = /^#([0-9a-f]{3}|[0-9a-f]{6})$/i.exec(text.trim())?.[1];
  if (digits === undefined) throw new Error(`${text} is no colour that is written in hexadecimal digits.`);
  const whole = digits.length === 3 ? [...digits].map((digit) => digit + digit).join('') : digits;
  const part = (at: number): number => Number.parseInt(whole.slice(at, at + 2), 16);
  return [part(0), part(2), part(4)];
};

/** [P] WCAG 2.2, definition of relative luminance, with the threshold 0.04045 of IEC 61966-2-1. */
const luminanceOf = (colour: Colour): number => {
  const [red, green, blue] = colour.map((part) => {
    const share = part / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
};

/** [P] WCAG 2.2, definition of contrast ratio: from 1 to 21. */
export const contrastOf = (one: Colour, other: Colour): number => {
  const [a, b] = [luminanceOf(one), luminanceOf(other)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
};
