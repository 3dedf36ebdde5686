/** Numbers as people write them: decimal comma or point, thousands, fractions. */

const vulgar: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** `6½` as `6 1/2`; every kind of space as one plain space. */
export const plainNumber = (text: string): string =>
  text
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${vulgar[sign] ?? ''}`)
    .replace(/[\s\u00a0\u2007\u202f]+/g, ' ')
    .trim();

/**
 * Everything that the text can mean as a number: nothing, one number, or two where `1,500` can be one and a half or fifteen
 * hundred. Which of them it is, only a bound of the quantity can say.
 */
export const numberReadings = (text: string): readonly number[] => {
  const plain = plainNumber(text);
  const fraction = /^(?:(\d{1,4}) )?(\d{1,3})\/(\d{1,3})$/.exec(plain);
  if (fraction !== null) {
    const [, whole = '0', over, under] = fraction;
    return Number(under) === 0 ? [] : [Number(whole) + Number(over) / Number(under)];
  }
  if (/^\d{1,3}(?:[ '’]\d{3})+(?:[.,]\d+)?$/.test(plain))
    return [Number(plain.replace(/[ '’]/g, '').replace(',', '.'))];
  if (/^\d{1,15}$/.test(plain)) return [Number(plain)];
  if (/^\d{1,3}(?:,\d{3})+\.\d+$/.test(plain)) return [Number(plain.replaceAll(',', ''))];
  if (/^\d{1,3}(?:\.\d{3})+,\d+$/.test(plain)) return [Number(plain.replaceAll('.', '').replace(',', '.'))];
  if (/^\d{1,3}(?:,\d{3}){2,}$|^\d{1,3}(?:\.\d{3}){2,}$/.test(plain))
    return [Number(plain.replace(/[.,]/g, ''))];
  if (!/^\d{0,15}[.,]\d{1,15}$/.test(plain)) return [];
  const decimal = Number(plain.replace(',', '.'));
  return /^[1-9]\d{0,2}[.,]\d{3}$/.test(plain) ? [decimal, Number(plain.replace(/[.,]/, ''))] : [decimal];
};
