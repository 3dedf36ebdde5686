/** The line of the bench ID over the bars of a tag, found from the bars: brought level and read. */
import { type BarsRead, placeOnTag } from '../bars/read-bars.ts';
import { type Field, valueAt } from '../field.ts';
import { inkEvidence } from './ink-evidence.ts';
import { type CharactersRead, readCharacters } from './read-characters.ts';

/** Samples for each module of the bars. */
const density = 1.2;
const beside = 6;

/** Em widths of the ten characters and the hyphen, from the narrowest to the widest that there are. */
const narrowestEm = 5.9;
const widestEm = 8.5;

/** `moduleDots` is the width of a module in dots where the tag faces the camera most. */
export const readCharactersOverBars = (field: Field, bars: BarsRead): CharactersRead | undefined => {
  const modules = 11 * (bars.reading.path.length - 1) + 13;
  const widths = bars.reading.path.map(({ width }) => width / 11);
  const mean = widths.reduce((sum, width) => sum + width, 0) / widths.length;
  const rowDots = mean / density;
  const half = bars.profile.rows / 2;
  const columns = Math.round((modules + 2 * beside) * density);
  const lowest = half - 8 * mean;
  const highest = half + 30 * mean;
  const rows = Math.round((highest - lowest) / rowDots);
  const values = new Float32Array(columns * rows);
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const { x, y } = placeOnTag(bars, column / density - beside, highest - row * rowDots);
      values[row * columns + column] = valueAt(field, x, y);
    }
  const evidence = inkEvidence({ width: columns, height: rows, values }, Math.round(14 * density));
  const start = beside * density;
  const end = (beside + modules) * density;
  const sizes: { across: number; down: number }[] = [];
  for (let em = narrowestEm; em <= widestEm; em *= 1.03) {
    const across = (modules * density) / em;
    sizes.push({ across, down: across });
  }
  return readCharacters(evidence, {
    sizes,
    start: [start - 3 * density, start + 3 * density],
    end: [end - 3 * density, end + 3 * density],
    baseline: [rows - 1 - 22 * density, rows - 2],
  });
};
