/** The sizes of the map of a lifeline, in units of its drawing. */
import type { LifelineMapRow } from '../../src/domain/lifeline/map.ts';

export const mapSizes = {
  /** Of the lifeline. */
  width: 1100,
  margin: 14,
  text: 18,
  lane: 30,
  labelGap: 8,
  labelPadding: 6,
  heading: 34,
  rope: 16,
  mark: 26,
  /** Between the rope and the labels. */
  stem: 26,
  rowGap: 18,
  scale: 62,
} as const;

/** Of the rope, from the top of its row to its upper edge. */
export const ropeTop = ({ findingLanes }: LifelineMapRow): number =>
  mapSizes.heading + findingLanes * mapSizes.lane + (findingLanes === 0 ? 0 : mapSizes.stem);

export const rowHeight = (row: LifelineMapRow): number =>
  ropeTop(row) +
  mapSizes.rope +
  (row.readingLanes === 0 ? 0 : mapSizes.stem + row.readingLanes * mapSizes.lane) +
  mapSizes.rowGap;
