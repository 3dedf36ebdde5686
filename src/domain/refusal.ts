/** A command refused by a rule, as a value: a stable code, the values its sentence needs, and the field at fault. */
import type errors from '../../assets/messages/en/errors.json';
import type { Message } from './message.ts';

export type RefusalCode = keyof typeof errors;
/** A message says its own words in the language of the person. */
export type RefusalValue = string | number | Message;
export type RefusalValues = Readonly<Record<string, RefusalValue>>;

export interface Refusal {
  readonly refused: true;
  readonly code: RefusalCode;
  readonly values: RefusalValues;
  readonly field?: string;
}

export const refusal = (code: RefusalCode, values: RefusalValues = {}, field?: string): Refusal =>
  field === undefined ? { refused: true, code, values } : { refused: true, code, values, field };

export const isRefusal = (value: unknown): value is Refusal =>
  typeof value === 'object' && value !== null && 'refused' in value && value.refused === true;
