/** Puts the station's refusal beside the field at fault, or at the end of the form where no field claims it. */
import type { CallError } from '../../src/station/contract.ts';

export interface FormFaults {
  /** The sentence for the field of one of these names; it is then not given out by `rest`. */
  at(...fields: readonly string[]): string | undefined;
  /** The sentence that no field has claimed. */
  rest(): string | undefined;
}

export const faultsOf = (error: CallError | undefined): FormFaults => {
  let isClaimed = false;
  return {
    at: (...fields) => {
      if (error?.field === undefined || !fields.includes(error.field)) return undefined;
      isClaimed = true;
      return error.sentence;
    },
    rest: () => (isClaimed ? undefined : error?.sentence),
  };
};

export const hasFaults = (faults: Readonly<Record<string, string | undefined>>): boolean =>
  Object.values(faults).some((fault) => fault !== undefined);
