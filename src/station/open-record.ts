/** The record of a station: opened, and where a restored one takes its place, closed and opened again while calls wait. */
import { isRefusal, type Refusal } from '../domain/refusal.ts';
import { planRestore, type RestorePlan } from '../ledger/backup/put-in-place.ts';
import type { Ledger } from '../ledger/ledger.ts';
import { openSqliteLedger } from '../ledger/sqlite/sqlite-ledger.ts';
import { storageRefusal } from '../ledger/storage-refusal.ts';
import { type PinGuard, type PinTry, pinGuards } from './pin.ts';

export interface RecordInUse {
  readonly ledger: Ledger;
  pins(by: PinTry): PinGuard;
}

export class OpenRecord {
  /** As it was opened first. */
  readonly opened: RecordInUse;
  readonly #folder: string;
  #state: Promise<RecordInUse | Refusal>;

  private constructor(folder: string, record: RecordInUse) {
    this.#folder = folder;
    this.opened = record;
    this.#state = Promise.resolve(record);
  }

  static async open(folder: string): Promise<OpenRecord | Refusal> {
    const record = await inUse(folder);
    return isRefusal(record) ? record : new OpenRecord(folder, record);
  }

  /** Where a restore left the folder without an open record, it is tried again. */
  async current(): Promise<RecordInUse | Refusal> {
    const state = await this.#state;
    if (!isRefusal(state)) return state;
    this.#state = inUse(this.#folder);
    return this.#state;
  }

  /**
   * Nobody may use the record meanwhile: `untilIdle` resolves when what was begun has ended. Refused, everything is as it
   * was, or the folder is tried again at the next call.
   */
  async replace(plan: RestorePlan, untilIdle: () => Promise<void>): Promise<RecordInUse | Refusal> {
    const before = await this.current();
    if (isRefusal(before)) return before;
    let fault: Refusal | undefined;
    const replaced = async (): Promise<RecordInUse | Refusal> => {
      await untilIdle();
      try {
        await planRestore(this.#folder, plan);
      } catch (error) {
        fault = await storageRefusal(error, this.#folder);
        return before;
      }
      await before.ledger.close();
      return inUse(this.#folder);
    };
    this.#state = replaced();
    const after = await this.#state;
    return fault ?? after;
  }

  async close(): Promise<void> {
    const state = await this.#state;
    if (!isRefusal(state)) await state.ledger.close();
  }
}

const inUse = async (folder: string): Promise<RecordInUse | Refusal> => {
  const ledger = await openSqliteLedger(folder);
  return isRefusal(ledger) ? ledger : { ledger, pins: pinGuards(ledger) };
};
