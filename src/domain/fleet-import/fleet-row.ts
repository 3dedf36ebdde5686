/** One row of a fleet list: what it says of a device, and what is wrong with it. */
import type { BenchId } from '../brand.ts';
import type { DeclaredInspection } from '../declared-inspection.ts';
import type { OtherCode } from '../device.ts';
import type { TypeOfUse } from '../due/type-of-use.ts';
import type { EquipmentFacts } from '../equipment-facts.ts';
import type { LifelineMaterial } from '../model-sheet.ts';
import type { Refusal } from '../refusal.ts';

/** A fault of a row, or of the whole list where there is no row. */
export interface RowFault {
  /** As a spreadsheet counts it. */
  readonly row?: number;
  /** From 0. */
  readonly column?: number;
  readonly refusal: Refusal;
}

/** What a model sheet is made of, as far as the row says it. */
export interface ModelFacts {
  readonly manufacturer: string;
  readonly model: string;
  readonly ratedLengthM?: number;
  readonly lifelineMaterial?: LifelineMaterial;
  readonly lifelineDiameterMm?: number;
  readonly capacityKg?: { readonly from: number; readonly to: number };
  readonly standard?: string;
  readonly loadIndicatorFitted?: boolean;
}

export type DeclaredInspectionOfRow = Omit<DeclaredInspection, 'source'>;

export interface FleetRow extends EquipmentFacts {
  readonly row: number;
  readonly model: ModelFacts;
  readonly serial: string;
  /** Year, month or day; empty where the list says none. */
  readonly dateOfManufacture: string;
  readonly benchId?: BenchId;
  readonly codes: readonly OtherCode[];
  /** As the list writes it: a name, a badge or an ID. */
  readonly regularUser?: string;
  /** What counts only where a competent person takes the list in. */
  readonly typeOfUse?: TypeOfUse;
  /** The code on the label of its shelf. */
  readonly place?: string;
  readonly inspection?: DeclaredInspectionOfRow;
  /** The list says that it is out of service, or that it was removed at its last inspection. */
  readonly isRemoved: boolean;
}
