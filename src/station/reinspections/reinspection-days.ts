/** Within how many days of the first inspection a blind second one is made, at this station. */
import type { Program } from '../../domain/program.ts';
import { usualReinspectionDays } from '../../domain/reinspection/reinspection.ts';

export const reinspectionDays = ({ reinspectionDays: chosen }: Program): number =>
  chosen ?? usualReinspectionDays;
