/** The map of a lifeline, to scale, as data: every inspection a row, so that a window and a report draw the same. */
import type { DiameterReading } from '../answer.ts';
import type { Metres } from '../brand.ts';
import type { LengthUnit } from '../length.ts';
import { isBelowMinimum } from './below-minimum.ts';
import type { LifelineFinding, LifelineInspection } from './lifeline-inspection.ts';
import { type LabelSpace, type PlacedLabel, placeLabels } from './place-labels.ts';
import { lifelineTicks, type Tick } from './ticks.ts';

/** Findings so close together that their marks would touch; one mark and one label stand for them. */
export interface FindingCluster {
  /** In the unit of the drawing, from its left end: the middle of the marks. */
  readonly x: number;
  readonly fromM: number;
  readonly toM: number;
  /** In the order of their places. */
  readonly findings: readonly LifelineFinding[];
  readonly label: PlacedLabel;
}

export interface ReadingMark {
  readonly x: number;
  readonly reading: DiameterReading;
  readonly belowMinimum: boolean;
  readonly label: PlacedLabel;
}

export interface LifelineMapRow {
  readonly inspection: LifelineInspection;
  readonly clusters: readonly FindingCluster[];
  /** Lanes of labels that the findings take. */
  readonly findingLanes: number;
  readonly readings: readonly ReadingMark[];
  readonly readingLanes: number;
}

export interface LifelineMap {
  readonly ratedLengthM: Metres;
  /** Of the lifeline in the drawing, from the hook at 0 to full payout. */
  readonly width: number;
  readonly ticks: readonly Tick[];
  /** Newest first. */
  readonly rows: readonly LifelineMapRow[];
}

export interface LifelineMapRequest extends LabelSpace {
  readonly ratedLengthM: Metres;
  readonly unit: LengthUnit;
  readonly minimumDiameterMm?: number | undefined;
  readonly inspections: readonly LifelineInspection[];
  /** Marks nearer than this to the next one become one cluster, in the unit of the drawing. */
  readonly markWidth: number;
  /** The words on a mark, in the language of the reader. */
  readonly textOfFindings: (findings: readonly LifelineFinding[]) => string;
  readonly textOfReading: (reading: DiameterReading) => string;
}

/** `width` is of the lifeline alone; any unit (dots, millimetres, points) will do, for nothing is rounded. */
export const lifelineMap = (request: LifelineMapRequest): LifelineMap => ({
  ratedLengthM: request.ratedLengthM,
  width: request.width,
  ticks: lifelineTicks(request.ratedLengthM, request.unit),
  rows: request.inspections
    .toSorted((a, b) => b.on.localeCompare(a.on) || b.inspection - a.inspection)
    .map((inspection) => rowOf(inspection, request)),
});

const rowOf = (inspection: LifelineInspection, request: LifelineMapRequest): LifelineMapRow => {
  const groups = clustered(inspection.findings, request);
  const findingLabels = placeLabels(
    groups.map((findings) => ({ x: middleOf(findings, request), text: request.textOfFindings(findings) })),
    request,
  );
  const readingLabels = placeLabels(
    inspection.readings.map((reading) => ({
      x: xOf(reading.positionM, request),
      text: request.textOfReading(reading),
    })),
    request,
  );
  const { minimumDiameterMm } = request;
  return {
    inspection,
    clusters: groups.flatMap((findings, index) => {
      const label = findingLabels[index];
      const [first] = findings;
      const last = findings.at(-1);
      if (label === undefined || first === undefined || last === undefined) return [];
      const x = middleOf(findings, request);
      return [{ x, fromM: first.positionM, toM: last.positionM, findings, label }];
    }),
    findingLanes: lanesOf(findingLabels),
    readings: inspection.readings.flatMap((reading, index) => {
      const label = readingLabels[index];
      if (label === undefined) return [];
      const belowMinimum =
        minimumDiameterMm !== undefined && isBelowMinimum(reading.diameterMm, minimumDiameterMm);
      return [{ x: xOf(reading.positionM, request), reading, belowMinimum, label }];
    }),
    readingLanes: lanesOf(readingLabels),
  };
};

/** A position beyond the rated length, which no answer can have, would stand at its end. */
const xOf = (positionM: number, { ratedLengthM, width }: LifelineMapRequest): number =>
  Math.min(Math.max(positionM / ratedLengthM, 0), 1) * width;

const middleOf = (findings: readonly LifelineFinding[], request: LifelineMapRequest): number => {
  const xs = findings.map(({ positionM }) => xOf(positionM, request));
  return (Math.min(...xs) + Math.max(...xs)) / 2;
};

/** Runs of findings of which each is nearer than a mark to the one before it. */
const clustered = (
  findings: readonly LifelineFinding[],
  request: LifelineMapRequest,
): readonly (readonly LifelineFinding[])[] => {
  const groups: LifelineFinding[][] = [];
  for (const finding of findings.toSorted((a, b) => a.positionM - b.positionM)) {
    const last = groups.at(-1);
    const before = last?.at(-1);
    const isNear =
      before !== undefined &&
      xOf(finding.positionM, request) - xOf(before.positionM, request) < request.markWidth;
    if (isNear) last?.push(finding);
    else groups.push([finding]);
  }
  return groups;
};

const lanesOf = (labels: readonly PlacedLabel[]): number =>
  labels.reduce((most, { lane }) => Math.max(most, lane + 1), 0);
